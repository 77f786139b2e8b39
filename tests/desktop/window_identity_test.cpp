#include "desktop/window_identity.h"

#include <QApplication>
#include <QIcon>
#include <QImage>

#include <gtest/gtest.h>

#include "desktop/theme/apply_theme.h"

namespace pantile::desktop {
namespace {

TEST(WindowIdentity, IsTheInstalledEntryAndAnIconInTheColoursOfTheTheme) {
    setWindowIdentity(*qApp);
    EXPECT_EQ(QApplication::desktopFileName(), QStringLiteral("pantile-desktop"));

    const QImage icon = QApplication::windowIcon().pixmap(200, 200).toImage();
    ASSERT_EQ(icon.size(), QSize(200, 200));
    EXPECT_EQ(icon.pixelColor(0, 0).alpha(), 0) << "the corners are round";
    const Theme theme = makeTheme(Shade::Light);
    EXPECT_EQ(icon.pixelColor(20, 100).rgb(), toQColor(theme.ground).rgb());
    EXPECT_EQ(icon.pixelColor(100, 140).rgb(), toQColor(theme.caution).rgb());
    EXPECT_EQ(icon.pixelColor(100, 170).rgb(), toQColor(theme.structure).rgb());
}

}  // namespace
}  // namespace pantile::desktop
