#include "board/small_picture.h"

#include <gtest/gtest.h>

#include "support/random.h"

namespace pantile::board {
namespace {

TEST(SmallPicture, IsTheGridItselfIfThatFits) {
    const core::Grid grid = *core::Grid::create(3, 2, {0, 1, 2, 3, 4, 5});
    EXPECT_EQ(smallPicture(grid, {3, 2}), grid);
    EXPECT_EQ(smallPicture(grid, {128, 128}), grid);
}

TEST(SmallPicture, ShowsWhatMostCellsHave) {
    const core::Grid grid = *core::Grid::create(4, 4,
                                                {
                                                    1, 1, 2, 0,  //
                                                    1, 0, 2, 2,  //
                                                    3, 3, 5, 4,  //
                                                    0, 3, 4, 5,  //
                                                });
    // Of four and five, twice each, the lower one.
    EXPECT_EQ(smallPicture(grid, {2, 2}), *core::Grid::create(2, 2, {1, 2, 3, 4}));
}

TEST(SmallPicture, KeepsProportions) {
    const core::Grid wide = *core::Grid::filled(64, 16, 3);
    EXPECT_EQ(smallPicture(wide, {32, 32}).size(), (core::Size{32, 8}));
    EXPECT_EQ(smallPicture(wide, {100, 4}).size(), (core::Size{16, 4}));
    const core::Grid line = *core::Grid::filled(256, 1, 3);
    EXPECT_EQ(smallPicture(line, {10, 10}).size(), (core::Size{10, 1}));
}

TEST(SmallPicture, StaysOnEveryScreenAndInThePalette) {
    tests::Random random(17);
    for (int round = 0; round < 200; ++round) {
        const core::Size size = {random.between(1, 40), random.between(1, 40)};
        const core::Size screen = {random.between(1, 40), random.between(1, 40)};
        core::Grid grid = *core::Grid::filled(size.width, size.height, 0);
        for (int y = 0; y < size.height; ++y) {
            for (int x = 0; x < size.width; ++x) {
                grid.set(x, y, static_cast<core::PaletteIndex>(random.between(3, 9)));
            }
        }
        const core::Grid picture = smallPicture(grid, screen);
        EXPECT_LE(picture.width(), screen.width);
        EXPECT_LE(picture.height(), screen.height);
        EXPECT_LE(picture.largestIndex(), grid.largestIndex());
        for (const core::PaletteIndex index : picture.cells()) EXPECT_GE(index, 3);
    }
}

}  // namespace
}  // namespace pantile::board
