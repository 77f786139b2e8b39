// The ratios are those of the W3C's definition worked by hand: black on white is 21 by the text of
// WCAG 2.1; the grey is (1.05) / (0.2159 + 0.05) with sRGB 128 as 0.2159 linear (IEC 61966-2-1).

#include "desktop/theme/contrast.h"

#include <gtest/gtest.h>

namespace pantile::desktop {
namespace {

constexpr core::Rgb8 kWhite{255, 255, 255};
constexpr core::Rgb8 kBlack{0, 0, 0};

TEST(Contrast, IsTwentyOneBetweenBlackAndWhiteEitherWayRound) {
    EXPECT_NEAR(contrastRatio(kBlack, kWhite), 21, 1e-9);
    EXPECT_NEAR(contrastRatio(kWhite, kBlack), 21, 1e-9);
}

TEST(Contrast, IsOneBetweenEqualColours) {
    EXPECT_DOUBLE_EQ(contrastRatio({80, 90, 100}, {80, 90, 100}), 1);
}

TEST(Contrast, WeighsTheLightOfEachPrimary) {
    EXPECT_NEAR(relativeLuminance({255, 0, 0}), 0.2126, 1e-9);
    EXPECT_NEAR(relativeLuminance({0, 255, 0}), 0.7152, 1e-9);
    EXPECT_NEAR(relativeLuminance({0, 0, 255}), 0.0722, 1e-9);
    EXPECT_NEAR(contrastRatio({128, 128, 128}, kWhite), 3.949, 0.001);
}

}  // namespace
}  // namespace pantile::desktop
