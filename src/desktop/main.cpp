// pantile-desktop: the window. Everything it does stands in the folder's other files.

#include <QApplication>
#include <QCommandLineParser>
#include <QFontInfo>

#include "desktop/dialogs/dialog_prompts.h"
#include "desktop/main_window.h"
#include "desktop/texts.h"
#include "desktop/theme/apply_theme.h"
#include "desktop/window_identity.h"
#include "tasks/library_place.h"

namespace {

using namespace pantile;

struct Options {
    std::string library;
    QString theme;
};

Options readOptions(const QApplication& application) {
    QCommandLineParser parser;
    parser.setApplicationDescription(QApplication::translate("main", "Pantile's window."));
    parser.addHelpOption();
    parser.addVersionOption();
    const QCommandLineOption library(QStringLiteral("library"),
                                     QApplication::translate("main", "The library to open."),
                                     QStringLiteral("FILE"));
    const QCommandLineOption theme(
        QStringLiteral("theme"),
        QApplication::translate("main", "light or dark, instead of what the platform has."),
        QStringLiteral("SHADE"));
    parser.addOptions({library, theme});
    parser.addPositionalArgument(QStringLiteral("FILE"),
                                 QApplication::translate("main", "The same as --library FILE."),
                                 QStringLiteral("[FILE]"));
    parser.process(application);
    const QStringList files = parser.positionalArguments();
    Options options{parser.value(library).toStdString(), parser.value(theme)};
    if (options.library.empty() && !files.isEmpty()) options.library = files.first().toStdString();
    if (options.library.empty()) options.library = tasks::defaultLibraryPath();
    return options;
}

desktop::Shade shadeFor(const QString& theme) {
    if (theme == QLatin1String("light")) return desktop::Shade::Light;
    if (theme == QLatin1String("dark")) return desktop::Shade::Dark;
    return desktop::platformShade();
}

}  // namespace

int main(int argc, char** argv) {
    QApplication application(argc, argv);
    desktop::setWindowIdentity(application);
    if (QFontInfo(QApplication::font()).family().isEmpty())
        qWarning(
            "This machine has no fonts, so the window shows no words; on Debian: apt-get install "
            "fonts-dejavu-core");
    QApplication::setApplicationVersion(QStringLiteral(PANTILE_VERSION));
    const Options options = readOptions(application);
    const desktop::Theme theme = desktop::makeTheme(shadeFor(options.theme));
    desktop::applyTheme(application, theme);

    desktop::DialogPrompts prompts;
    auto library = tasks::openLibrary(options.library, tasks::Purpose::Look);
    if (!library) {
        prompts.tellError(desktop::shownError(library.error().at(options.library)));
        return 1;
    }
    desktop::AppContext context(*std::move(library), prompts, theme);
    desktop::MainWindow window(context);
    window.show();
    return QApplication::exec();
}
