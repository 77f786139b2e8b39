#include "image_files/png_table.h"

#include <gtest/gtest.h>

#include "support/png_bytes.h"

namespace pantile::image_files {
namespace {

using core::Rgba8;

TEST(PngTable, JoinsColoursAndAlphas) {
    const tests::PngParts parts{1, 1, 8, 3, {1, 2, 3, 4, 5, 6, 7, 8, 9}, {0, 128}, {0, 0}};
    EXPECT_EQ(pngTable(tests::pngOf(parts)),
              (std::vector<Rgba8>{{1, 2, 3, 0}, {4, 5, 6, 128}, {7, 8, 9, 255}}));
}

TEST(PngTable, IgnoresAlphasThatBelongToNoColour) {
    const tests::PngParts parts{1, 1, 8, 3, {1, 2, 3}, {9, 9, 9, 9}, {0, 0}};
    EXPECT_EQ(pngTable(tests::pngOf(parts)), (std::vector<Rgba8>{{1, 2, 3, 9}}));
}

TEST(PngTable, IsEmptyWithoutAPaletteOrWhenCutBeforeItsEnd) {
    const tests::Bytes png = tests::pngOf({1, 1, 8, 3, {1, 2, 3}, {}, {0, 0}});
    constexpr std::size_t kPaletteEnd = 8 + 25 + 15;
    for (std::size_t length = 0; length < kPaletteEnd; ++length)
        EXPECT_TRUE(pngTable(std::span(png).first(length)).empty()) << length;
    EXPECT_EQ(pngTable(std::span(png).first(kPaletteEnd)).size(), 1U);
    EXPECT_TRUE(pngTable(tests::pngOf({1, 1, 8, 2, {}, {}, {0, 1, 2, 3}})).empty());
}

TEST(PngTable, StandsAForgedLength) {
    tests::Bytes png = tests::pngOf({1, 1, 8, 3, {1, 2, 3}, {}, {0, 0}});
    for (std::size_t i = 33; i < 37; ++i) png[i] = 0xFF;  // the palette's length
    EXPECT_TRUE(pngTable(png).empty());
}

}  // namespace
}  // namespace pantile::image_files
