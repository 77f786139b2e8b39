#include "picture/digit_glyphs.h"

#include <set>
#include <string>

#include <gtest/gtest.h>

#include "picture/pictures.h"

namespace pantile::picture {
namespace {

std::string drawn(std::string_view digits, core::Size size, core::Point at = {0, 0},
                  int scale = 1) {
    core::Pixels pixels = flat(size.width, size.height, grey(255));
    drawDigits(pixels, at, digits, scale, grey(0));
    std::string rows;
    for (int y = 0; y < size.height; ++y) {
        for (int x = 0; x < size.width; ++x) rows += pixels.at(x, y) == grey(0) ? '#' : '.';
        rows += '\n';
    }
    return rows;
}

TEST(DigitGlyphs, StandSideBySide) {
    EXPECT_EQ(digitsSize("17", 1), (core::Size{7, 5}));
    EXPECT_EQ(drawn("17", {7, 5}),
              ".#..###\n"
              "##....#\n"
              ".#...#.\n"
              ".#...#.\n"
              "###..#.\n");
}

TEST(DigitGlyphs, AreAllDifferent) {
    std::set<std::string> seen;
    for (char digit = '0'; digit <= '9'; ++digit) seen.insert(drawn({&digit, 1}, {3, 5}));
    EXPECT_EQ(seen.size(), 10U);
}

TEST(DigitGlyphs, AreDrawnLarger) {
    EXPECT_EQ(digitsSize("4", 2), (core::Size{6, 10}));
    EXPECT_EQ(drawn("4", {6, 4}, {0, 0}, 2), "##..##\n##..##\n##..##\n##..##\n");
}

TEST(DigitGlyphs, AreCutAtTheEdge) {
    EXPECT_EQ(drawn("8", {2, 2}, {-1, -1}), ".#\n##\n");
    EXPECT_EQ(drawn("-", {3, 5}), "...\n...\n...\n...\n...\n");
}

}  // namespace
}  // namespace pantile::picture
