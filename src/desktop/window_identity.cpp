#include "desktop/window_identity.h"

#include <QApplication>
#include <QIcon>

// The macro wants to stand outside of all namespaces; in a static library nothing else draws it in.
static void bringResources() {
    Q_INIT_RESOURCE(shipped);
}

namespace pantile::desktop {

void setWindowIdentity(QApplication& application) {
    bringResources();
    QApplication::setApplicationName(QStringLiteral("pantile-desktop"));
    QApplication::setDesktopFileName(QStringLiteral("pantile-desktop"));
    application.setWindowIcon(
        QIcon::fromTheme(QStringLiteral("pantile"), QIcon(QStringLiteral(":/pantile.svg"))));
}

}  // namespace pantile::desktop
