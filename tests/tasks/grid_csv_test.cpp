#include "tasks/grid_csv.h"

#include "support/matchers.h"
#include "support/random.h"

namespace pantile::tasks {
namespace {

using core::ErrorKind;
using tests::failsWith;
using tests::isOk;

TEST(GridCsv, ReadsRowsAndRemarks) {
    const auto csv = parseGridCsv(
        "# title Wet sand\r\n# palette #000000 #ffffff #b5532d\r\n# transparent 2\r\n"
        "0, 1,2\r\n\r\n2,1,0\r\n");
    ASSERT_THAT(csv, isOk());
    EXPECT_EQ(csv->title, "Wet sand");
    EXPECT_EQ(csv->grid, *core::Grid::create(3, 2, {0, 1, 2, 2, 1, 0}));
    EXPECT_EQ(csv->palette,
              *core::Palette::create({{0, 0, 0}, {255, 255, 255}, {0xb5, 0x53, 0x2d}}, 2));
}

TEST(GridCsv, TakesSemicolonsTabsAndAByteOrderMark) {
    EXPECT_EQ(parseGridCsv("\xEF\xBB\xBF"
                           "1;2\n3;4")
                  ->grid,
              *core::Grid::create(2, 2, {1, 2, 3, 4}));
    EXPECT_EQ(parseGridCsv("1\t2\n")->grid, *core::Grid::create(2, 1, {1, 2}));
}

// As a spreadsheet writes a line that begins with '#' and holds a separator: RFC 4180.
TEST(GridCsv, ReadsRemarksInQuotes) {
    const std::string text = "\"# title Kelp,=1+1 \"\"x\"\"\"\n\"# transparent 0\"\n0,1\n";
    EXPECT_TRUE(looksLikeGridCsv(text));
    const auto csv = parseGridCsv(text);
    ASSERT_THAT(csv, isOk());
    EXPECT_EQ(csv->title, "Kelp,=1+1 \"x\"");
    EXPECT_THAT(parseGridCsv("\"#\n0\n"), failsWith(ErrorKind::InvalidInput, "row 1"));
    EXPECT_THAT(parseGridCsv("\"#\"\n0\n"), isOk());
    EXPECT_FALSE(looksLikeGridCsv("\"# \n"));
}

TEST(GridCsv, RefusesWhatIsNoGridAndSaysWhere) {
    EXPECT_THAT(parseGridCsv("1,2\n3\n"),
                failsWith(ErrorKind::InvalidInput, "row 2 has 1 entry, and row 1 has 2"));
    EXPECT_THAT(parseGridCsv("1,kelp\n"),
                failsWith(ErrorKind::InvalidInput, "row 1, column 2: 'kelp'"));
    EXPECT_THAT(parseGridCsv("1,-1\n"),
                failsWith(ErrorKind::InvalidInput, "row 1, column 2: '-1'"));
    EXPECT_THAT(parseGridCsv("256\n"), failsWith(ErrorKind::InvalidInput, "'256'"));
    EXPECT_THAT(parseGridCsv("99999999999999999999\n"),
                failsWith(ErrorKind::InvalidInput, "column 1"));
    EXPECT_THAT(parseGridCsv("1,,2\n"), failsWith(ErrorKind::InvalidInput, "row 1, column 2: ''"));
    EXPECT_THAT(parseGridCsv("1.5\n"), failsWith(ErrorKind::InvalidInput, "'1.5'"));
    EXPECT_THAT(parseGridCsv(""), failsWith(ErrorKind::InvalidInput, "0x0"));
    EXPECT_THAT(
        parseGridCsv("# transparent x\n1\n"),
        failsWith(ErrorKind::InvalidInput, "the remark 'transparent x' names no palette index"));
    EXPECT_THAT(parseGridCsv("# palette #00000\n1\n"),
                failsWith(ErrorKind::InvalidInput, "'#00000'"));
}

TEST(GridCsv, RefusesTooManyRowsAndColumns) {
    std::string wide = "0";
    for (int i = 0; i < 256; ++i) wide += ",0";
    EXPECT_THAT(parseGridCsv(wide), failsWith(ErrorKind::TooLarge, "more than 256 columns"));
    std::string high;
    for (int i = 0; i < 257; ++i) high += "0\n";
    EXPECT_THAT(parseGridCsv(high), failsWith(ErrorKind::TooLarge, "more than 256 rows"));
}

TEST(GridCsv, TellsGridsFromOtherText) {
    EXPECT_TRUE(looksLikeGridCsv("# remark\n0,1\n"));
    EXPECT_TRUE(looksLikeGridCsv("-1,0\n"));
    EXPECT_FALSE(looksLikeGridCsv("file,title\nkelp.png,Kelp\n"));
    EXPECT_FALSE(looksLikeGridCsv("Hello there, 0,1\n"));
    EXPECT_FALSE(looksLikeGridCsv(""));
}

TEST(GridCsv, WhatIsWrittenIsReadBack) {
    tests::Random random(42);
    for (int round = 0; round < 100; ++round) {
        const int width = random.between(1, 40);
        const int height = random.between(1, 40);
        const int colours = random.between(2, 256);
        std::vector<core::Rgb8> palette(static_cast<std::size_t>(colours));
        for (core::Rgb8& colour : palette) {
            colour.r = static_cast<std::uint8_t>(random.between(0, 255));
            colour.b = static_cast<std::uint8_t>(random.between(0, 255));
        }
        std::vector<core::PaletteIndex> cells(static_cast<std::size_t>(width * height));
        for (core::PaletteIndex& cell : cells) {
            cell = static_cast<core::PaletteIndex>(random.between(0, colours - 1));
        }
        core::TextureText text;
        text.title = "Tile " + std::to_string(round);
        std::optional<core::PaletteIndex> transparent;
        if (round % 2 == 0)
            transparent = static_cast<core::PaletteIndex>(random.between(0, colours - 1));
        const core::Texture texture =
            *core::Texture::create(*core::Grid::create(width, height, cells),
                                   *core::Palette::create(palette, transparent), text);
        const auto back = parseGridCsv(writeGridCsv(texture));
        ASSERT_THAT(back, isOk());
        EXPECT_EQ(back->grid, texture.grid());
        EXPECT_EQ(back->palette, texture.palette());
        EXPECT_EQ(back->title, text.title);
    }
}

}  // namespace
}  // namespace pantile::tasks
