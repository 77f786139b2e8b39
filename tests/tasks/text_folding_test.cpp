// Expected forms by the character tables of The Unicode Standard: decompositions, full case folding
// (CaseFolding.txt, statuses C and F) and categories.

#include "tasks/text_folding.h"

#include <gtest/gtest.h>

namespace pantile::tasks {
namespace {

std::string folded(std::string_view text) {
    return unicodeFolding().fold(text);
}

TEST(TextFolding, TakesLetterCaseOff) {
    EXPECT_EQ(folded("Wet SAND 7"), "wet sand 7");
    EXPECT_EQ(folded("ΣΊΓΜΑΣ"), folded("σίγμας"));
    EXPECT_EQ(folded("ПРИБОЙ"), folded("прибой"));
    EXPECT_EQ(folded("Straße"), "strasse");
    EXPECT_EQ(folded("𐐀"), "𐐨") << "beyond 16 bits";
}

TEST(TextFolding, TakesAccentsOff) {
    EXPECT_EQ(folded("Ébène"), "ebene");
    EXPECT_EQ(folded("e\u0301"), folded("é"));
    EXPECT_EQ(folded("İ"), "i");
    EXPECT_EQ(folded("ẲẢ"), "aa");
    EXPECT_EQ(folded("ø"), "ø") << "it has no decomposition";
}

TEST(TextFolding, MakesWidthsAndLigaturesAlike) {
    EXPECT_EQ(folded("Ｆｕｌｌ"), "full");
    EXPECT_EQ(folded("ﬁn"), "fin");
    EXPECT_EQ(folded("ｶﾞﾗｽ"), "ガラス");
}

TEST(TextFolding, KeepsWhatMakesAnotherLetter) {
    EXPECT_NE(folded("が"), folded("か"));
    EXPECT_EQ(folded("か\u3099"), folded("が"));
    EXPECT_EQ(folded("한"), "한");
    EXPECT_EQ(folded("\u1112\u1161\u11AB"), "한");
}

TEST(TextFolding, LeavesFoldedTextAsItIs) {
    for (const char* text : {"Ébène İ ẞ", "ΌΣΟΣ", "ﬃ Ǆ", "ガラスﾊﾟ", "𝔎elp ①", "q̣̇", ""}) {
        EXPECT_EQ(folded(folded(text)), folded(text)) << text;
    }
}

TEST(TextFolding, NamesItsRules) {
    EXPECT_FALSE(unicodeFolding().version.empty());
}

}  // namespace
}  // namespace pantile::tasks
