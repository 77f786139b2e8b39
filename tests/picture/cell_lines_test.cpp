#include "picture/cell_lines.h"

#include <gtest/gtest.h>

#include "picture/small_art.h"

namespace pantile::picture {
namespace {

TEST(CellLines, OfWholePitchesAreExact) {
    for (int pitch = 2; pitch <= 16; ++pitch) {
        const core::Picture art = smallArt(16, 16, static_cast<std::uint64_t>(pitch));
        const auto lines = findCellLines(enlargedTo(art, {16 * pitch, 16 * pitch}).pixels);
        ASSERT_TRUE(lines) << pitch;
        EXPECT_TRUE(lines->exact);
        EXPECT_EQ(lines->columns, (CellSide{{0, pitch, 1}, 16}));
        EXPECT_EQ(lines->rows, (CellSide{{0, pitch, 1}, 16}));
    }
}

TEST(CellLines, OfPitchesThatAreNoWholeNumberDivideThePicture) {
    const core::Picture art = smallArt(20, 12, 7);
    const auto lines = findCellLines(enlargedTo(art, {150, 90}).pixels);  // 7.5 pixels a cell
    ASSERT_TRUE(lines);
    EXPECT_TRUE(lines->exact);
    EXPECT_EQ(lines->columns.cells, 20);
    EXPECT_EQ(lines->rows.cells, 12);
}

TEST(CellLines, StayWhereTheyAreInACutOutPart) {
    const core::Pixels large = enlargedTo(smallArt(20, 20, 3), {160, 160}).pixels;
    core::Pixels part{{150, 140}, {}};  // from (3, 6): the first column is 5 wide, the row 2 high
    for (int y = 0; y < 140; ++y) {
        for (int x = 0; x < 150; ++x) part.pixels.push_back(large.at(x + 3, y + 6));
    }
    const auto lines = findCellLines(part);
    ASSERT_TRUE(lines);
    EXPECT_EQ(lines->columns.span, (AxisSpan{-3, 8, 1}));  // most of the first cell is there
    EXPECT_EQ(lines->columns.cells, 19);
    EXPECT_EQ(lines->rows.span, (AxisSpan{2, 8, 1}));  // too little of it is
    EXPECT_EQ(lines->rows.cells, 17);
}

TEST(CellLines, ShowThroughNoise) {
    const core::Picture large = enlargedTo(smallArt(16, 16, 4), {96, 96});
    const auto lines = findCellLines(withNoise(large, 6, 9).pixels);
    ASSERT_TRUE(lines);
    EXPECT_FALSE(lines->exact);
    EXPECT_EQ(lines->columns, (CellSide{{0, 6, 1}, 16}));
}

TEST(CellLines, AreNotFoundWhereThereAreNone) {
    EXPECT_FALSE(findCellLines(flat(64, 64, grey(90))));
    EXPECT_FALSE(findCellLines(flat(1, 1, grey(90))));
    EXPECT_FALSE(findCellLines(smallArt(32, 32, 6).pixels));  // art at its own size
    for (std::uint64_t seed = 1; seed <= 10; ++seed)
        EXPECT_FALSE(findCellLines(randomPixels(64, 48, seed))) << "seed " << seed;
    core::Pixels slope{{96, 64}, {}};
    for (int i = 0; i < 96 * 64; ++i) slope.pixels.push_back(grey(i % 96 + i / 96));
    EXPECT_FALSE(findCellLines(slope));
}

TEST(CellLines, InvisibleColoursMakeNone) {
    core::Pixels pixels = randomPixels(64, 64, 1);
    for (core::Rgba8& pixel : pixels.pixels) pixel.a = 0;
    EXPECT_FALSE(findCellLines(pixels));
}

}  // namespace
}  // namespace pantile::picture
