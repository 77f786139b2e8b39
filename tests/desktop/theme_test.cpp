#include "desktop/theme/theme.h"

#include <cmath>

#include <QApplication>
#include <QPalette>

#include <gtest/gtest.h>

#include "core/colour_spaces.h"
#include "desktop/theme/apply_theme.h"
#include "desktop/theme/contrast.h"

namespace pantile::desktop {
namespace {

class EachTheme : public ::testing::TestWithParam<Shade> {};

TEST_P(EachTheme, HasEnoughContrastInEveryPairThatMeets) {
    const std::vector<ColourPair> pairs = pairsOf(makeTheme(GetParam()));
    ASSERT_GE(pairs.size(), 20U);
    for (const ColourPair& pair : pairs) {
        EXPECT_GE(contrastRatio(pair.front, pair.behind), pair.least)
            << pair.what << ": " << core::toHex(pair.front) << " on " << core::toHex(pair.behind);
    }
}

TEST_P(EachTheme, ReachesThePaletteOfTheApplication) {
    const Theme theme = makeTheme(GetParam());
    applyTheme(*qApp, theme);
    EXPECT_EQ(QApplication::palette().color(QPalette::Window), toQColor(theme.ground));
    EXPECT_EQ(QApplication::palette().color(QPalette::WindowText), toQColor(theme.text));
    EXPECT_FALSE(qApp->styleSheet().contains(QLatin1Char('@'))) << "a colour has no value";
    EXPECT_EQ(platformShade(), GetParam());
    qApp->setStyleSheet({});
}

INSTANTIATE_TEST_SUITE_P(Theme, EachTheme, ::testing::Values(Shade::Light, Shade::Dark));

TEST(Theme, TurnsPaperAndInkRoundByNight) {
    const Theme light = makeTheme(Shade::Light);
    const Theme dark = makeTheme(Shade::Dark);
    EXPECT_EQ(light.ground, dark.text);
    EXPECT_EQ(light.text, dark.ground);
}

TEST(Theme, MakesItsColoursByTheRule) {
    const auto lch = [](core::Rgb8 colour) { return core::toOkLch(core::toOkLab(colour)); };
    const Theme theme = makeTheme(Shade::Light);
    EXPECT_NEAR(lch(theme.ground).l, 0.97, 0.005);
    EXPECT_NEAR(lch(theme.text).l, 0.25, 0.005);
    // Rounding to 8 bits moves a hue a little.
    EXPECT_NEAR(lch(theme.next).h, 40, 2);
    EXPECT_NEAR(lch(theme.done).h, 145, 3);
    EXPECT_NEAR(lch(theme.caution).h, 80, 2);
    EXPECT_NEAR(lch(theme.structure).h, 250, 6);
}

}  // namespace
}  // namespace pantile::desktop
