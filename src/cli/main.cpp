// pantile: the command line. All of it is in runCli; here is what only a process has.

#include <cstdlib>
#include <iostream>
#include <sys/ioctl.h>
#include <unistd.h>

#include <QCoreApplication>
#include <QLoggingCategory>

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

}  // namespace

int main(int argc, char** argv) {
    const std::stop_token stop = pantile::cli::stopOnInterrupt();
    std::ios::sync_with_stdio(false);
    const QCoreApplication application(argc, argv);
    // What is wrong with a picture is said in our own words.
    QLoggingCategory::setFilterRules(
        QStringLiteral("qt.gui.imageio*=false\nqt.gui.icc=false\nqt.svg*=false"));
    const std::vector<std::string> words(argv + 1, argv + argc);
    const int exitCode = pantile::cli::runCli(words, {std::cin, std::cout, std::cerr},
                                              terminalOfThisProcess(), stop);
    std::cout.flush();
    if (std::cout) return exitCode;
    std::cerr << "pantile: the answer could not be written in full\n";
    return 1;
}
