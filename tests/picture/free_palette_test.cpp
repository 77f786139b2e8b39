#include "picture/free_palette.h"

#include <algorithm>

#include <gtest/gtest.h>

#include "picture/pictures.h"
#include "support/matchers.h"

namespace pantile::picture {
namespace {

using core::Palette;
using core::Rgb8;
using tests::failsWith;

const std::vector<Rgb8> kPinned{{1, 2, 3}, {250, 0, 250}};

TEST(FreePalette, HasPinnedColoursInFrontWithAndWithoutADither) {
    for (const double mixing : {0.0, 1.0}) {
        const Palette palette = *freePalette(hazeCells({16, 16}, 3), {7, kPinned, 0, mixing});
        EXPECT_LE(palette.size(), 7);
        EXPECT_GE(palette.size(), 5);
        EXPECT_TRUE(std::equal(kPinned.begin(), kPinned.end(), palette.colours().begin()));
        EXPECT_FALSE(palette.transparent());
    }
}

TEST(FreePalette, GivesUnpaintedCellsAnEntryOfTheirOwn) {
    CellColours cells = hazeCells({16, 16}, 3);
    cells.cells[7].reset();
    const Palette palette = *freePalette(cells, {5, kPinned, 0, 1});
    EXPECT_EQ(palette.size(), 5);
    EXPECT_EQ(palette.transparent(), core::PaletteIndex{4});
}

TEST(FreePalette, KeepsFewColoursExactlyEvenForADither) {
    const std::vector<Rgb8> three{{9, 9, 9}, {200, 30, 30}, {0, 80, 200}};
    const CellColours cells{
        {3, 1}, {core::toLinear(three[0]), core::toLinear(three[1]), core::toLinear(three[2])}};
    EXPECT_EQ(*freePalette(cells, {16, {}, 0, 1}), *Palette::create(three));
}

TEST(FreePalette, MergesWhatLooksAlike) {
    const CellColours cells = hazeCells({24, 24}, 2);
    const Palette many = *freePalette(cells, {64, {}, 0, 0});
    const Palette few = *freePalette(cells, {64, {}, 400, 0});
    EXPECT_EQ(many.size(), 64);
    EXPECT_LT(few.size(), 40);
    EXPECT_GT(few.size(), 4);
}

TEST(FreePalette, RefusesToPinMoreThanThereIsRoomFor) {
    CellColours cells = hazeCells({4, 4}, 1);
    EXPECT_TRUE(freePalette(cells, {2, kPinned, 0, 1}));
    cells.cells[0].reset();
    EXPECT_THAT(freePalette(cells, {2, kPinned, 0, 0}),
                failsWith(core::ErrorKind::InvalidInput, "room for 1"));
    EXPECT_THAT(freePalette(cells, {9, {{1, 2, 3}, {1, 2, 3}}, 0, 0}),
                failsWith(core::ErrorKind::InvalidInput, "#010203 is pinned twice"));
}

}  // namespace
}  // namespace pantile::picture
