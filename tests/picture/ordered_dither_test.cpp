#include <gtest/gtest.h>

#include "picture/dither.h"
#include "picture/pictures.h"
#include "picture/threshold_mask.h"

namespace pantile::picture {
namespace {

using core::LinearRgb;
using core::Palette;

std::vector<int> ranksOf(const ThresholdMask& mask) {
    return {mask.ranks.begin(), mask.ranks.end()};
}

// B. E. Bayer 1973, in the usual print whose first row of four is 0 8 2 10.
TEST(OrderedDither, HasBayersMatrices) {
    EXPECT_EQ(ranksOf(kBayer2), (std::vector<int>{0, 2, 3, 1}));
    EXPECT_EQ(ranksOf(kBayer4),
              (std::vector<int>{0, 8, 2, 10, 12, 4, 14, 6, 3, 11, 1, 9, 15, 7, 13, 5}));
    EXPECT_EQ(ranksOf(kBayer8),
              (std::vector<int>{0,  32, 8,  40, 2,  34, 10, 42, 48, 16, 56, 24, 50, 18, 58, 26,
                                12, 44, 4,  36, 14, 46, 6,  38, 60, 28, 52, 20, 62, 30, 54, 22,
                                3,  35, 11, 43, 1,  33, 9,  41, 51, 19, 59, 27, 49, 17, 57, 25,
                                15, 47, 7,  39, 13, 45, 5,  37, 63, 31, 55, 23, 61, 29, 53, 21}));
}

// Follows from thresholds of (rank + 1/2) / n: k/n sets exactly the places of ranks below k.
TEST(OrderedDither, OfAGreySetsExactlyItsShareOfPlaces) {
    const Palette palette = *Palette::create({{0, 0, 0}, {255, 255, 255}});
    for (const ThresholdMask* mask : {&kBayer2, &kBayer4, &kBayer8}) {
        const core::Size size{mask->side, mask->side};
        for (int share = 0; share <= mask->count(); ++share) {
            const double light = static_cast<double>(share) / mask->count();
            const CellColours cells{
                size, std::vector<std::optional<LinearRgb>>(static_cast<std::size_t>(mask->count()),
                                                            LinearRgb{light, light, light})};
            const auto shown = orderedDither(cells, palette, *mask, 1);
            for (std::size_t i = 0; i < shown.size(); ++i)
                ASSERT_EQ(shown[i], mask->ranks[i] < share ? 1 : 0) << share << " at " << i;
        }
    }
}

TEST(OrderedDither, MixesAColourOfTheEntriesAroundIt) {
    // A tile of the 8x8 mask in one colour inside the palette's range: its mean is that colour, to
    // a part of 64.
    const Palette palette =
        *Palette::create({{0, 0, 0}, {255, 0, 0}, {0, 255, 0}, {0, 0, 255}, {255, 255, 255}});
    const LinearRgb wanted{0.5, 0.25, 0.25};
    const CellColours cells{{8, 8}, std::vector<std::optional<LinearRgb>>(64, wanted)};
    LinearRgb sum;
    for (const core::PaletteIndex index : orderedDither(cells, palette, kBayer8, 1)) {
        const LinearRgb light = core::toLinear(palette[index]);
        sum = {sum.r + light.r, sum.g + light.g, sum.b + light.b};
    }
    EXPECT_NEAR(sum.r / 64, wanted.r, 1.0 / 64);
    EXPECT_NEAR(sum.g / 64, wanted.g, 1.0 / 64);
    EXPECT_NEAR(sum.b / 64, wanted.b, 1.0 / 64);
}

}  // namespace
}  // namespace pantile::picture
