#include "core/colour_spaces.h"

#include <gtest/gtest.h>

#include "core/colour_difference.h"
#include "support/random.h"

namespace pantile::core {
namespace {

Rgb8 randomColour(tests::Random& random) {
    const auto channel = [&] { return static_cast<std::uint8_t>(random.between(0, 255)); };
    return {channel(), channel(), channel()};
}

TEST(ColourSpaces, EveryEightBitValueComesBackFromLinearLight) {
    for (int value = 0; value < 256; ++value) {
        const auto byte = static_cast<std::uint8_t>(value);
        EXPECT_EQ(linearToSrgb8(srgb8ToLinear(byte)), byte);
    }
}

TEST(ColourSpaces, LinearLightOutsideTheScreenIsCut) {
    EXPECT_EQ(linearToSrgb8(-0.5), 0);
    EXPECT_EQ(linearToSrgb8(7), 255);
    EXPECT_EQ(linearToSrgb8(std::numeric_limits<double>::quiet_NaN()), 0);
}

TEST(ColourSpaces, OkLabComesBackToTheSameColour) {
    tests::Random random(20261125);
    for (int i = 0; i < 2000; ++i) {
        const Rgb8 colour = randomColour(random);
        EXPECT_EQ(toRgb8(toLinear(toOkLab(colour))), colour) << toHex(colour);
    }
}

TEST(ColourSpaces, OkLchIsThePolarFormOfOkLab) {
    tests::Random random(7);
    for (int i = 0; i < 500; ++i) {
        const OkLab lab = toOkLab(randomColour(random));
        const OkLch lch = toOkLch(lab);
        EXPECT_GE(lch.h, 0);
        EXPECT_LT(lch.h, 360);
        EXPECT_NEAR(squaredDistance(toOkLab(lch), lab), 0, 1e-24);
    }
}

TEST(ColourDifference, IsZeroForEqualColoursAndSymmetric) {
    tests::Random random(11);
    for (int i = 0; i < 500; ++i) {
        const Lab p = toLab(randomColour(random));
        const Lab q = toLab(randomColour(random));
        EXPECT_EQ(ciede2000(p, p), 0);
        EXPECT_NEAR(ciede2000(p, q), ciede2000(q, p), 1e-9);
        EXPECT_GE(ciede2000(p, q), 0);
    }
}

}  // namespace
}  // namespace pantile::core
