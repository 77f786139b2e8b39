#include "codec/glyphs.h"

#include <string>

#include <gtest/gtest.h>

#include "codec/base58.h"

namespace pantile::codec {
namespace {

/// The glyphs written out: symbols as themselves, marks as 0 O I l, gaps as '_', breaks as '/'.
std::string shown(std::string_view text) {
    constexpr std::string_view kOthers = "0OIl_/";
    std::string line;
    for (const Glyph glyph : readGlyphs(text).glyphs) {
        line += isSymbol(glyph) ? kBase58Digits[glyph] : kOthers[glyph - kZero];
    }
    return line;
}

TEST(Glyphs, KeepLettersAndDigitsAndMakeGapsOfTheRest) {
    EXPECT_EQ(shown("Az9 0OIl, - *x*"), "Az9_0OIl_x_");
}

TEST(Glyphs, ReadAllLineBreaksAsOne) {
    EXPECT_EQ(shown("a\nb\rc\r\nd"), "a/b/c/d");
    EXPECT_EQ(shown("a\xC2\x85"
                    "b\xE2\x80\xA8"
                    "c\xE2\x80\xA9"
                    "d"),
              "a/b/c/d");
    EXPECT_EQ(shown("a \n\n > b"), "a/b");
}

TEST(Glyphs, DropInvisibleCharactersInsideWords) {
    EXPECT_EQ(shown("a\xE2\x80\x8B"
                    "b\xC2\xAD"
                    "c\xEF\xBB\xBF"
                    "d\xE2\x80\x8E"
                    "e\xEF\xB8\x8F"
                    "f\xE2\x81\xA0"
                    "g"),
              "abcdefg");
    EXPECT_EQ(shown(std::string_view("a\0b", 3)), "ab");
}

TEST(Glyphs, FoldFullWidthFormsAndTheMultiplicationSign) {
    EXPECT_EQ(shown("\xEF\xBC\x90\xEF\xBC\xA9\xEF\xBD\x82"), "0Ib");
    EXPECT_EQ(shown("4\xC3\x97"
                    "8"),
              "4x8");
}

TEST(Glyphs, TakeOtherBlanksAndBadBytesForGaps) {
    EXPECT_EQ(shown("a\tb\xC2\xA0"
                    "c\xE3\x80\x80"
                    "d"),
              "a_b_c_d");
    EXPECT_EQ(shown("a\xFF"
                    "b\xC3"),
              "a_b_");
}

TEST(Glyphs, ReadThroughTagsAndBreakLinesAtThoseThatDo) {
    EXPECT_EQ(shown("a<b>b</b>c<wbr>d"), "abcd");
    EXPECT_EQ(shown("a<br>b<BR />c</p>d<div class=\"x y\">e"), "a/b/c/d/e");
    EXPECT_EQ(shown("a <3 b < c"), "a_3_b_c");
    EXPECT_EQ(shown("a<!-- note -->b"), "ab");
}

TEST(Glyphs, DoNotLetALooseBracketHideACode) {
    EXPECT_EQ(shown("a <b 0I2 > c"), "a_b_0I2_c");
}

TEST(Glyphs, ReadEntities) {
    EXPECT_EQ(shown("a&nbsp;b&#120;c&#x78;d&shy;e&gt;f"), "a_bxcxde_f");
    EXPECT_EQ(shown("a&b&;c&toolongforanyentityatall;d"),
              "a_b_c_too"
              "longforanyentityata"
              "ll_d");
    EXPECT_EQ(shown("a&#99999999999;b&#x110000;c"), "a_99999999999_b_c");
}

TEST(Glyphs, ReadBackslashAndPercentEscapes) {
    EXPECT_EQ(shown("a\\nb\\r\\nc\\td\\u0078e\\"), "a/b/c_dxe_");
    EXPECT_EQ(shown("a%0Ab%0D%0Ac%20d%zz"), "a/b/c_d_zz");
}

TEST(Glyphs, KnowTheLineOfTheText) {
    const GlyphText text = readGlyphs(
        "a\nb\r\n<i\n>c\\nd\xE2\x80\xA8"
        "e");
    EXPECT_EQ(text.lineOf(0), 1U);
    EXPECT_EQ(text.lineOf(2), 2U);
    EXPECT_EQ(text.lineOf(4), 4U);                       // c
    EXPECT_EQ(text.lineOf(6), 4U);                       // d, behind a written break
    EXPECT_EQ(text.lineOf(text.glyphs.size() - 1), 5U);  // e
}

TEST(Glyphs, KnowTheBytesAtWhichTheyBegin) {
    const std::string_view text = "a\xC3\xA4&#120;b\xEF\xBC\xA1\xE2\x80\x8Bz";
    EXPECT_EQ(shown(text), "a_xbAz");
    const std::vector<std::size_t> all = {0, 1, 2, 3, 4, 5, 6, 90};
    EXPECT_EQ(byteOffsets(text, all), (std::vector<std::size_t>{0, 1, 3, 9, 10, 16, 17, 17}));
    const std::vector<std::size_t> some = {2, 2, 5};
    EXPECT_EQ(byteOffsets(text, some), (std::vector<std::size_t>{3, 3, 16}));
    EXPECT_TRUE(byteOffsets(text, {}).empty());
}

}  // namespace
}  // namespace pantile::codec
