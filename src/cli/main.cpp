// pantile: the command line. All of it is in runCli; here is what only a process has.

#include <cstdlib>
#include <iostream>
#include <memory>
#include <string>
#include <sys/ioctl.h>
#include <unistd.h>
#include <vector>

#include <QCoreApplication>
#include <QGuiApplication>

#include "cli/interrupt.h"
#include "cli/run_cli.h"

namespace {

pantile::cli::Terminal terminalOfThisProcess() {
    pantile::cli::Terminal terminal;
    const char* noColour = std::getenv("NO_COLOR");
    terminal.colour = isatty(STDOUT_FILENO) != 0 && (noColour == nullptr || *noColour == '\0');
    terminal.progressBar = isatty(STDERR_FILENO) != 0;
    winsize size{};
    if (ioctl(STDERR_FILENO, TIOCGWINSZ, &size) == 0 && size.ws_col > 0)
        terminal.columns = size.ws_col;
    return terminal;
}

std::unique_ptr<QCoreApplication> applicationFor(const std::vector<std::string>& words, int& argc,
                                                 char** argv) {
    if (!pantile::cli::printsAPage(words)) return std::make_unique<QCoreApplication>(argc, argv);
    qputenv("QT_QPA_PLATFORM", "offscreen");  // Fonts, but no display.
    return std::make_unique<QGuiApplication>(argc, argv);
}

}  // namespace

int main(int argc, char** argv) {
    const std::stop_token stop = pantile::cli::stopOnInterrupt();
    std::ios::sync_with_stdio(false);
    const std::vector<std::string> words(argv + 1, argv + argc);
    const auto application = applicationFor(words, argc, argv);
    // What is wrong is said in our own words.
    qInstallMessageHandler([](QtMsgType kind, const QMessageLogContext&, const QString& remark) {
        if (kind == QtFatalMsg) std::cerr << remark.toStdString() << '\n';
    });
    const int exitCode = pantile::cli::runCli(words, {std::cin, std::cout, std::cerr},
                                              terminalOfThisProcess(), stop);
    std::cout.flush();
    if (std::cout) return exitCode;
    std::cerr << "pantile: the answer could not be written in full\n";
    return 1;
}
