#include "draw/ink.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include <gtest/gtest.h>

namespace pantile::sample_art {
namespace {

TEST(TidewrackPalette, HasSixteenColoursAndSpritesOneClearEntryMore) {
    EXPECT_EQ(tidewrackPalette().size(), kInkCount);
    EXPECT_FALSE(tidewrackPalette().transparent().has_value());
    EXPECT_EQ(tidewrackSpritePalette().size(), kInkCount + 1);
    EXPECT_EQ(tidewrackSpritePalette().transparent(),
              std::optional<core::PaletteIndex>(static_cast<core::PaletteIndex>(Ink::Clear)));
}

// sample_library/README.md states this distance.
TEST(TidewrackPalette, KeepsEveryPairOfColoursApart) {
    const core::Palette palette = tidewrackPalette();
    double least = 1e9;
    for (int i = 0; i < palette.size(); ++i) {
        for (int j = 0; j < i; ++j) {
            const double squared = core::squaredDistance(
                core::toOkLab(palette.colours()[static_cast<std::size_t>(i)]),
                core::toOkLab(palette.colours()[static_cast<std::size_t>(j)]));
            least = std::min(least, std::sqrt(squared));
        }
    }
    EXPECT_NEAR(least, 0.0797, 0.00005);
}

TEST(TidewrackPalette, ClimbsByAFifthOfLightnessOnEachRamp) {
    const core::Palette palette = tidewrackPalette();
    int index = 0;
    for (const InkRamp& ramp : inkRamps()) {
        for (int step = 0; step < ramp.count; ++step, ++index) {
            const core::OkLab colour =
                core::toOkLab(palette.colours()[static_cast<std::size_t>(index)]);
            EXPECT_NEAR(colour.l, ramp.first.l + 0.20 * step, 0.003) << ramp.name << ' ' << step;
        }
    }
    EXPECT_EQ(index, kInkCount);
}

/// The encoded value before rounding, from linear light.
double encoded(double linear) {
    return core::linearToSrgb(linear) * 255.0;
}

// Hue becomes a and b by the C library's sine and cosine, whose last bits differ between machines.
// No channel may lie so near to a rounding edge, or outside the screen's range, that they matter.
TEST(TidewrackPalette, RoundsToTheSameBytesOnEveryMachine) {
    for (const core::OkLch& recipe : inkRecipes()) {
        const core::LinearRgb light = core::toLinear(core::toOkLab(recipe));
        for (const double channel : {light.r, light.g, light.b}) {
            EXPECT_TRUE(channel >= 0.0 && channel <= 1.0) << recipe.l << ' ' << recipe.h;
            const double value = encoded(channel);
            EXPECT_GT(std::abs(value - std::floor(value) - 0.5), 1e-6)
                << recipe.l << ' ' << recipe.h;
        }
    }
}

}  // namespace
}  // namespace pantile::sample_art
