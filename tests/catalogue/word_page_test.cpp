#include "catalogue/word_page.h"

#include <algorithm>

#include <gtest/gtest.h>

#include "support/random.h"

namespace pantile::catalogue {
namespace {

using tests::Random;

constexpr std::uint64_t placed(std::size_t place) {
    return std::uint64_t{1} << place;
}

TEST(WordPage, HasTheFormatOfTheSchema) {
    WordPage page;
    EXPECT_EQ(page.bytes(), "");
    page.set(2, {"kelp", "", "cc0", "", ""});
    EXPECT_EQ(page.bytes(),
              "\xFF\xFFkelp\xFE\xFE"
              "cc0\xFF");
    page.set(0, {"", "", "", "", "wet"});
    EXPECT_EQ(page.bytes(),
              "\xFE\xFE\xFE\xFEwet\xFF\xFFkelp\xFE\xFE"
              "cc0\xFF");
    page.set(2, {});
    EXPECT_EQ(page.bytes(), "\xFE\xFE\xFE\xFEwet\xFF");
}

TEST(WordPage, FindsTextAndItsFields) {
    WordPage page;
    page.set(3, {"kelp on kelp", "maker", "", "", "of kelp"});
    page.set(63, {"", "kel", "p", "", ""});
    const std::string bytes = page.bytes();
    EXPECT_EQ(hitsIn(bytes, "kelp"), (WordHits{placed(3), 0, 0, 0, placed(3)}));
    EXPECT_EQ(hitsIn(bytes, "p"), (WordHits{placed(3), 0, placed(63), 0, placed(3)}));
    EXPECT_EQ(hitsIn(bytes, "rmak"), WordHits{});
    EXPECT_EQ(hitsIn("", "kelp"), WordHits{});
}

// Whatever is looked for in whatever stands there: as a look at each text by itself tells.
TEST(WordPage, FindsWhatStandsInEachText) {
    Random random(5);
    const auto word = [&](int most) {
        std::string text;
        for (int i = random.between(0, most); i > 0; --i) {
            const char* const letters[] = {"a", "b", "\n", "é", "砂"};
            text += letters[random.between(0, 4)];
        }
        return text;
    };
    for (int run = 0; run < 200; ++run) {
        std::array<WordTexts, WordPage::kTextures> texts;
        WordPage page;
        for (std::size_t place = 0; place < texts.size(); ++place) {
            if (random.between(0, 2) == 0) continue;
            for (std::string& text : texts[place]) text = word(6);
            page.set(place, texts[place]);
        }
        const std::string bytes = page.bytes();
        EXPECT_EQ(WordPage(bytes).bytes(), bytes);
        const std::string wanted = "a" + word(2);
        WordHits expected{};
        for (std::size_t place = 0; place < texts.size(); ++place) {
            for (std::size_t field = 0; field < texts[place].size(); ++field) {
                const bool stands = texts[place][field].find(wanted) != std::string::npos;
                if (stands) expected[field] |= placed(place);
            }
        }
        EXPECT_EQ(hitsIn(bytes, wanted), expected);
    }
}

// The bytes come from a file that may be forged.
TEST(WordPage, TakesAnyBytes) {
    Random random(6);
    for (int run = 0; run < 2000; ++run) {
        std::string bytes;
        for (int i = random.between(0, 300); i > 0; --i)
            bytes += "ab\xFE\xFF"[random.between(0, 3)];
        // With any bytes in it a field is what lies between two ends.
        const WordHits hits = hitsIn(bytes, "a");
        EXPECT_EQ(hitsIn(WordPage(bytes).bytes(), "a"), hits);
        const std::string again = WordPage(bytes).bytes();
        EXPECT_EQ(WordPage(again).bytes(), again);
    }
    WordPage page;
    page.set(0, {"net\xFF\xFE", "", "", "", ""});
    EXPECT_EQ(page.bytes(), "net\xFF");
}

}  // namespace
}  // namespace pantile::catalogue
