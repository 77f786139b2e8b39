#include "picture/cell_difference.h"

#include <cmath>

#include <gtest/gtest.h>

#include "core/colour_spaces.h"
#include "picture/pictures.h"

namespace pantile::picture {
namespace {

using core::Palette;
using core::PaletteIndex;

TEST(CellDifference, CountsTenThousandthsOfOkLab) {
    // Black is OKLab 0 0 0 and white 1 0 0 by the definition of the space.
    const CellDifference difference(*Palette::create({{0, 0, 0}, {255, 255, 255}}));
    EXPECT_EQ(difference.squared(0, 1), 100'000'000);
    EXPECT_EQ(difference.distance(0, 1), 10'000);
    EXPECT_EQ(difference.squared(1, 1), 0);
}

TEST(CellDifference, PutsUnpaintedCellsAsFarAsBlackFromWhite) {
    const CellDifference difference(
        *Palette::create({{10, 10, 10}, {10, 10, 10}, {9, 9, 9}}, PaletteIndex{1}));
    EXPECT_EQ(difference.distance(0, 1), 10'000);
    EXPECT_EQ(difference.distance(1, 2), 10'000);
    EXPECT_EQ(difference.distance(1, 1), 0);
}

TEST(CellDifference, IsTheSquaredDistanceToTheNearestStep) {
    const std::vector<core::Rgb8> colours = randomColours(40, 7);
    const CellDifference difference(*Palette::create(colours));
    for (PaletteIndex p = 0; p < 40; ++p) {
        for (PaletteIndex q = 0; q < 40; ++q) {
            const double wanted =
                core::squaredDistance(core::toOkLab(colours[p]), core::toOkLab(colours[q]));
            // Each of the three differences is off by one step at most.
            const double root = std::sqrt(wanted) * 10'000;
            ASSERT_NEAR(std::sqrt(static_cast<double>(difference.squared(p, q))), root, 1.8);
            ASSERT_EQ(difference.squared(p, q), difference.squared(q, p));
            const std::int64_t whole = difference.distance(p, q);
            ASSERT_LE(whole * whole, difference.squared(p, q));
            ASSERT_GT((whole + 1) * (whole + 1), difference.squared(p, q));
        }
    }
}

}  // namespace
}  // namespace pantile::picture
