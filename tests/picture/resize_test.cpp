#include "picture/resize.h"

#include "picture/cell_art.h"
#include "support/matchers.h"

namespace pantile::picture {
namespace {

using core::ErrorKind;
using core::Grid;
using core::Result;
using tests::failsWith;
using tests::isOk;

Art artOfResult(const Result<Grid>& grid) {
    EXPECT_THAT(grid, isOk());
    return grid ? artOf(*grid) : Art{};
}

TEST(Resize, CropAndExtendAsWorkedByHand) {
    const Grid grid = gridOf({"0123", "4567", "8901"});
    EXPECT_EQ(artOfResult(cropped(grid, {1, 1, 2, 2})), (Art{"56", "90"}));
    EXPECT_EQ(artOfResult(cropped(grid, {0, 0, 3, 2})), artOf(grid));
    EXPECT_EQ(artOfResult(extended(gridOf({"12"}), {1, 2, 3, 0}, 7)),
              (Art{"777777", "777777", "712777"}));
}

TEST(Resize, ExtendThenCropIsTheSame) {
    tests::Random random(11);
    for (int i = 0; i < 50; ++i) {
        const Grid grid = randomGrid(randomSize(random, 20), 5, random);
        const Margins margins{random.between(0, 9), random.between(0, 9), random.between(0, 9),
                              random.between(0, 9)};
        const auto larger = extended(grid, margins, 9);
        ASSERT_THAT(larger, isOk());
        const auto back =
            cropped(*larger, {margins.left, margins.top, margins.left + grid.width() - 1,
                              margins.top + grid.height() - 1});
        ASSERT_THAT(back, isOk());
        EXPECT_EQ(*back, grid);
    }
}

TEST(Resize, WholeFactorsAsWorkedByHand) {
    EXPECT_EQ(artOfResult(scaledUp(gridOf({"12"}), 2)), (Art{"1122", "1122"}));
    // Blocks: three of four; two and two, 1 comes first; all different, 3 comes first.
    EXPECT_EQ(artOfResult(scaledDown(gridOf({"211234", "111256"}), 2)), (Art{"113"}));
    EXPECT_EQ(artOfResult(scaledDown(gridOf({"123", "330", "011"}), 3)), (Art{"1"}));
}

TEST(Resize, DownTakesBackUp) {
    tests::Random random(12);
    for (int factor = 1; factor <= 8; ++factor) {
        const Grid grid = randomGrid(randomSize(random, 20), 5, random);
        const auto larger = scaledUp(grid, factor);
        ASSERT_THAT(larger, isOk());
        EXPECT_EQ(larger->width(), grid.width() * factor);
        const auto back = scaledDown(*larger, factor);
        ASSERT_THAT(back, isOk());
        EXPECT_EQ(*back, grid);
    }
}

TEST(Resize, WhatDoesNotFitIsRefused) {
    const Grid grid = gridOf({"0123", "4567"});
    constexpr int kMost = 2147483647;
    EXPECT_THAT(cropped(grid, {0, 0, 4, 1}),
                failsWith(ErrorKind::InvalidInput,
                          "columns 0 to 4 and rows 0 to 1 is not wholly "
                          "on the texture of 4x2 cells"));
    EXPECT_THAT(cropped(grid, {-kMost - 1, 0, kMost, 1}),
                failsWith(ErrorKind::InvalidInput, "not wholly"));
    EXPECT_THAT(cropped(grid, {2, 0, 1, 1}), failsWith(ErrorKind::InvalidInput, "not wholly"));
    EXPECT_THAT(extended(grid, {0, -1, 0, 0}, 0), failsWith(ErrorKind::InvalidInput, "-1"));
    EXPECT_THAT(extended(grid, {253, 0, 0, 0}, 0),
                failsWith(ErrorKind::InvalidInput, "a grid of 257x2"));
    EXPECT_THAT(extended(grid, {kMost, kMost, 0, 0}, 0),
                failsWith(ErrorKind::InvalidInput, "2147"));
    EXPECT_THAT(scaledUp(grid, 65), failsWith(ErrorKind::InvalidInput, "a grid of 260x130"));
    EXPECT_THAT(scaledUp(grid, 0), failsWith(ErrorKind::InvalidInput, "the factor is 0"));
    EXPECT_THAT(scaledDown(grid, kMost), failsWith(ErrorKind::InvalidInput, "the factor is 2147"));
    EXPECT_THAT(scaledDown(grid, 4),
                failsWith(ErrorKind::InvalidInput, "4x2 cells are not whole blocks of 4x4"));
}

}  // namespace
}  // namespace pantile::picture
