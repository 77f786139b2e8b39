#include "core/text.h"

#include "support/matchers.h"
#include "support/random.h"

namespace pantile::core {
namespace {

using tests::failsWith;
using tests::isOk;

constexpr TextRule kTitle{"title", 20};
constexpr TextRule kNote{"note", 20, LineBreaks::Allowed};

// The Unicode Standard 15, table 3-7: the edges of what is well formed, and what lies just outside.
TEST(Utf8, FollowsTheTableOfWellFormedSequences) {
    for (const char* good :
         {"", "kelp", "\x7F", "\xC2\x80", "\xDF\xBF", "\xE0\xA0\x80", "\xED\x9F\xBF",
          "\xEE\x80\x80", "\xEF\xBF\xBF", "\xF0\x90\x80\x80", "\xF4\x8F\xBF\xBF"}) {
        EXPECT_TRUE(isValidUtf8(good)) << good;
    }
    for (const char* bad :
         {"\x80", "\xC0\xAF", "\xC1\xBF", "\xC2", "\xC2\x41", "\xE0\x9F\xBF", "\xED\xA0\x80",
          "\xEF\xBF", "\xF0\x8F\xBF\xBF", "\xF4\x90\x80\x80", "\xF5\x80\x80\x80", "\xFF"}) {
        EXPECT_FALSE(isValidUtf8(bad));
    }
}

TEST(Text, ChecksLengthInCharactersNotBytes) {
    EXPECT_THAT(checkText("Tang und Algen übers", kTitle), isOk());
    EXPECT_THAT(checkText(std::string(21, 'k'), kTitle),
                failsWith(ErrorKind::TooLarge, "21 characters"));
}

TEST(Text, RefusesControlAndDirectionCharactersNamingTheirPlace) {
    EXPECT_THAT(checkText("ab\x1b[2J", kTitle),
                failsWith(ErrorKind::InvalidInput, "\\x1b at place 3"));
    EXPECT_THAT(checkText("a\u202eb", kTitle),
                failsWith(ErrorKind::InvalidInput, "\\u202e at place 2"));
    EXPECT_THAT(checkText("\xC2\x9B", kTitle), failsWith(ErrorKind::InvalidInput, "\\x9b"));
    EXPECT_THAT(checkText("\u2066x", kTitle), failsWith(ErrorKind::InvalidInput, "\\u2066"));
    EXPECT_THAT(checkText(std::string_view("a\0b", 3), kTitle),
                failsWith(ErrorKind::InvalidInput, "\\x00"));
    EXPECT_THAT(checkText("a\xff", kTitle),
                failsWith(ErrorKind::InvalidInput, "not UTF-8 text at byte 2"));
}

TEST(Text, AllowsLineBreaksOnlyWhereTheRuleDoes) {
    EXPECT_THAT(checkText("a\nb", kNote), isOk());
    EXPECT_THAT(checkText("a\nb", kTitle), failsWith(ErrorKind::InvalidInput, "\\x0a"));
    EXPECT_THAT(checkText("a\rb", kNote), failsWith(ErrorKind::InvalidInput, "\\x0d"));
}

TEST(Text, QuotesAndCommentMarksAreOrdinaryText) {
    EXPECT_THAT(checkText("\"rope\" */ 'net'", kTitle), isOk());
}

TEST(Text, CleaningGivesTextThatPassesTheCheck) {
    EXPECT_EQ(cleanedText("  wet\t\tsand \u202e2 ", kTitle), "wet sand 2");
    EXPECT_EQ(cleanedText("a\xff\xfe"
                          "b",
                          kTitle),
              "a b");
    EXPECT_EQ(cleanedText("one two three four five six", kTitle), "one two three four f");
    tests::Random random(99);
    for (int i = 0; i < 2000; ++i) {
        std::string bytes(static_cast<std::size_t>(random.between(0, 60)), '\0');
        for (char& c : bytes) c = static_cast<char>(random.between(0, 255));
        EXPECT_THAT(checkText(cleanedText(bytes, kTitle), kTitle), isOk());
        EXPECT_THAT(checkText(cleanedText(bytes, kNote), kNote), isOk());
    }
}

TEST(Text, VisibleTextShowsWhatWouldActOnATerminal) {
    EXPECT_EQ(visibleText("kelp"), "kelp");
    EXPECT_EQ(visibleText("\x1b[31mred\x07"), "\\x1b[31mred\\x07");
    EXPECT_EQ(visibleText("a\u202eb"), "a\\u202eb");
    // Unicode Standard Annex 9, table 1, and the byte order mark: each of them, alone.
    for (const char* mark :
         {"\u061c", "\u200e", "\u200f", "\u202a", "\u202e", "\u2066", "\u2069", "\ufeff"})
        EXPECT_EQ(visibleText(mark).front(), '\\') << mark;
    EXPECT_EQ(visibleText("a\nb"), "a\\x0ab");
    EXPECT_EQ(visibleText("a\nb", LineBreaks::Allowed), "a\nb");
    EXPECT_EQ(visibleText("\x9b"), "\\x9b");
}

TEST(Text, ExcerptIsShortAndVisible) {
    EXPECT_EQ(excerpt("kelp"), "kelp");
    EXPECT_EQ(excerpt(std::string(41, 'x')), std::string(40, 'x') + "…");
    EXPECT_EQ(excerpt("a\tb"), "a\\x09b");
}

TEST(SafeFileName, KeepsPlainNamesAndDefusesOthers) {
    EXPECT_EQ(safeFileName("Wet sand 2"), "Wet-sand-2");
    EXPECT_EQ(safeFileName("../../etc/passwd"), "etc-passwd");
    EXPECT_EQ(safeFileName("/"), "texture");
    EXPECT_EQ(safeFileName(""), "texture");
    EXPECT_EQ(safeFileName("-rf"), "rf");
    EXPECT_EQ(safeFileName(".hidden"), "hidden");
    EXPECT_EQ(safeFileName("a\\b:c*d?e"), "a-b-c-d-e");
    EXPECT_EQ(safeFileName("NUL"), "NUL-texture");
    EXPECT_EQ(safeFileName("com1"), "com1-texture");
    EXPECT_EQ(safeFileName("LPT0"), "LPT0-texture");
    EXPECT_EQ(safeFileName("com\u00B9"), "com\u00B9-texture");
    EXPECT_EQ(safeFileName("com\u2074"), "com\u2074");
    EXPECT_EQ(safeFileName("com12"), "com12");
    EXPECT_EQ(safeFileName("tång"), "tång");
    EXPECT_EQ(safeFileName("x\u202egnp.exe"), "x-gnp-exe");
    EXPECT_EQ(safeFileName(std::string(10000, 'k')), std::string(60, 'k'));
    std::string wide;
    for (int i = 0; i < 60; ++i) wide += "\U0001FAB8";
    EXPECT_EQ(safeFileName(wide), wide.substr(0, 200));
}

}  // namespace
}  // namespace pantile::core
