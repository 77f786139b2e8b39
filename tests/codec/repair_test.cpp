#include "codec/repair.h"

#include <chrono>
#include <set>

#include <gtest/gtest.h>

#include "code_support.h"
#include "codec/armour.h"
#include "codec/harvest.h"
#include "slips.h"

namespace pantile::codec {
namespace {

using Lines = std::vector<std::string>;
using tests::joined;
using tests::linesOf;
using tests::Slip;

/// The texture alone must be read from `text`, with that many slips put right; -1: any number.
void expectHealed(const std::string& text, const core::Texture& texture, int repaired = -1) {
    const Harvest harvest = harvestCodes(text);
    ASSERT_EQ(harvest.found.size(), 1U)
        << text << '\n'
        << (harvest.damaged.empty() ? "nothing said" : harvest.damaged[0].reason);
    ASSERT_EQ(harvest.found[0].texture, texture) << text;
    ASSERT_TRUE(harvest.damaged.empty()) << text << '\n' << harvest.damaged[0].reason;
    ASSERT_EQ(static_cast<std::size_t>(harvest.found[0].repaired), harvest.found[0].repairs.size());
    if (repaired >= 0) {
        ASSERT_EQ(harvest.found[0].repaired, repaired) << text;
    }
}

core::Texture withoutWords(const core::Texture& texture) {
    return *texture.withText({});
}

/// A code of one line, one of a few, and one of some ten.
std::vector<core::Texture> texturesToDamage() {
    tests::Random random(103);
    return {withoutWords(tests::randomTexture(random, {1, 1}, 2)),
            tests::randomTexture(random, {8, 8}, 4), tests::usualTexture(3)};
}

TEST(Repair, HealsAnyOneSlipAnywhere) {
    for (const core::Texture& texture : texturesToDamage()) {
        const std::string code = tests::codeOf(texture);
        const std::string& letters = tests::typedLetters();
        for (std::size_t at = 0; at < code.size(); ++at) {
            // Every fifth letter, others at every place; tests/soak tries all of them.
            for (std::size_t letter = at % 11; letter < letters.size(); letter += 11) {
                std::string wrong = code;
                tests::slipAt(wrong, at, Slip::Wrong, letters[letter]);
                expectHealed(wrong, texture);
            }
            for (const Slip slip : {Slip::Missing, Slip::Doubled, Slip::Swapped}) {
                std::string text = code;
                tests::slipAt(text, at, slip, ' ');
                expectHealed(text, texture);
            }
        }
    }
}

TEST(Repair, PutsTheFrozenVectorsRight) {
    for (const auto& path : tests::vectorFiles("damaged_codes")) {
        std::map<std::string, std::string> fields = tests::readFields(path);
        const Harvest right = harvestCodes(fields["code"]);
        const Harvest harvest = harvestCodes(fields["damaged"]);
        ASSERT_EQ(right.found.size(), 1U) << path;
        ASSERT_EQ(harvest.found.size(), 1U) << path;
        EXPECT_EQ(harvest.found[0].texture, right.found[0].texture) << path;
        EXPECT_TRUE(harvest.damaged.empty()) << path;
        std::string said = joined(harvest.found[0].repairs, "\n");
        // In the files colons end the names of fields.
        for (std::size_t at = 0; (at = said.find(": ", at)) != std::string::npos;) {
            said.replace(at, 2, ", ");
        }
        EXPECT_EQ(said, fields["slips"]) << path;
    }
}

TEST(Repair, HealsOneSlipInsideForeignText) {
    const core::Texture texture = tests::usualTexture(6);
    const std::string code = tests::codeOf(texture);
    tests::Random random(104);
    for (int i = 0; i < 300; ++i) {
        std::string text = code;
        tests::slipAnywhere(random, text);
        std::string quoted = "At 10:01 Old Ida wrote:\n\n> ";
        for (const char c : text) quoted += c == '\n' ? std::string("\r\n> ") : std::string(1, c);
        expectHealed(quoted + "\n\nNice, isn't it? 0I2 see you\n", texture);
    }
}

TEST(Repair, HealsOneSlipWhereLinesAreGluedOrInGroups) {
    const core::Texture texture = tests::usualTexture(6);
    const Lines lines = linesOf(tests::codeOf(texture));
    tests::Random random(105);
    for (int i = 0; i < 300; ++i) {
        std::string text = joined(lines, i % 2 == 0 ? "" : " ");
        tests::slipAnywhere(random, text);
        expectHealed(text, texture);
        Lines grouped = lines;
        tests::slipAnywhere(random,
                            grouped[tests::placeIn(random, std::string(lines.size(), ' '))]);
        for (std::string& line : grouped) {
            line.insert(std::min<std::size_t>(22, line.size()), " ");
            line.insert(std::min<std::size_t>(11, line.size()), " ");
        }
        expectHealed(joined(grouped, "\n"), texture);
    }
}

TEST(Repair, HealsTwoSlipsInDifferentLinesInAtLeast99OfAHundred) {
    const std::vector<core::Texture> textures = texturesToDamage();
    tests::Random random(106);
    constexpr int kTries = 600;
    int healed = 0;
    for (int i = 0; i < kTries; ++i) {
        const core::Texture& texture = textures[1 + static_cast<std::size_t>(i % 2)];
        Lines lines = linesOf(tests::codeOf(texture));
        const auto first = tests::placeIn(random, std::string(lines.size(), ' '));
        const auto second =
            (first + 1 + tests::placeIn(random, std::string(lines.size() - 1, ' '))) % lines.size();
        tests::slipAnywhere(random, lines[first]);
        tests::slipAnywhere(random, lines[second]);
        const Harvest harvest = harvestCodes(joined(lines, "\n"));
        for (const FoundCode& found : harvest.found) ASSERT_EQ(found.texture, texture);
        if (!harvest.found.empty()) ++healed;
    }
    EXPECT_GE(healed * 100, kTries * 99);
}

/// Whether an inner line of a code checks as the one of that number.
bool stillChecks(const std::string& line, std::size_t number) {
    Symbols symbols;
    for (const char c : line.substr(1))
        symbols.push_back(static_cast<std::uint8_t>(kBase58Digits.find(c)));
    return toldLineNumber(symbols) == number;
}

TEST(Repair, HealsTwoLookAlikesInOneLine) {
    const core::Texture texture = tests::noisyTexture();
    Lines lines = linesOf(tests::codeOf(texture));
    int tried = 0;
    for (std::size_t i = 1; i + 1 < lines.size(); ++i) {
        Lines typed = lines;
        int slips = 0;
        for (char& c : typed[i]) {
            if (slips < 2 && (c == 'S' || c == 'B' || c == 'Z' || c == 'x')) {
                c = c == 'S' ? '5' : c == 'B' ? '8' : c == 'Z' ? '2' : 'X';
                ++slips;
            }
        }
        // Two slips that keep the line check, one pair of 58, tell no place.
        if (slips < 2 || stillChecks(typed[i], i + 1)) continue;
        ++tried;
        expectHealed(joined(typed, "\n"), texture, 2);
    }
    EXPECT_GT(tried, 2);
}

TEST(Repair, HealsSwapsThatNoLineCheckNotices) {
    const core::Texture texture = tests::noisyTexture();
    const std::string code = tests::codeOf(texture, {MethodChoice::PlainRunsOnly});
    int tried = 0;
    for (std::size_t at = 2; at + 1 < code.size(); ++at) {
        const std::size_t left = kBase58Digits.find(code[at]);
        const std::size_t right = kBase58Digits.find(code[at + 1]);
        if (left == std::string_view::npos || right == std::string_view::npos) continue;
        if (std::max(left, right) - std::min(left, right) != kBase / 2) continue;
        ++tried;
        std::string text = code;
        tests::slipAt(text, at, Slip::Swapped, ' ');
        expectHealed(text, texture, 1);
        // And beside a slip in another line.
        const std::size_t other = text.find('\n', at) + 9;
        if (other >= text.size()) continue;
        tests::slipAt(text, other, Slip::Missing, ' ');
        expectHealed(text, texture, 2);
    }
    EXPECT_GT(tried, 1);
}

TEST(Repair, SaysWhatItPutRight) {
    const core::Texture texture = tests::noisyTexture();
    const Lines lines = linesOf(tests::codeOf(texture));
    const auto said = [&](std::size_t line, const std::string& text) {
        Lines damaged = lines;
        damaged[line - 1] = text;
        const Harvest harvest = harvestCodes(joined(damaged, "\n"));
        EXPECT_EQ(harvest.found.size(), 1U);
        return harvest.found.empty() ? Lines{} : harvest.found[0].repairs;
    };
    const std::string fifth = lines[4];
    std::string text = fifth;
    text[11] = text[11] == 'q' ? 'g' : 'q';
    EXPECT_EQ(said(5, text),
              (Lines{std::string("line 5, letter 12: ") + text[11] + " read as " + fifth[11]}));
    text = fifth;
    ASSERT_NE(text[10], text[11]);
    ASSERT_NE(text[11], text[12]);
    std::swap(text[11], text[12]);
    EXPECT_EQ(said(5, text), (Lines{"line 5, letters 12 and 13: " + text.substr(11, 2) +
                                    " read as " + fifth.substr(11, 2)}));
    text = fifth;
    text.erase(11, 1);
    EXPECT_EQ(said(5, text), (Lines{std::string("line 5, letter 12: ") + fifth[11] + " put in"}));
    text = fifth;
    text.insert(11, 1, 'q');
    EXPECT_EQ(said(5, text), (Lines{"line 5, letter 12: q left out"}));
    text = fifth;
    text[0] = 'o';
    EXPECT_EQ(said(5, text), (Lines{"line 5, letter 1: o read as 0"}));
    EXPECT_EQ(said(1, "o" + lines[0].substr(1)), (Lines{"line 1: start mark put right"}));
    EXPECT_EQ(said(1, "0I" + lines[0].substr(3)), (Lines{"line 1, letter 3: 2 put in"}));
    EXPECT_EQ(said(5, fifth), Lines{});
}

TEST(Repair, FindsACodeOfOneLineBehindADamagedStartMarkInProse) {
    tests::Random random(5);
    const core::Texture texture = withoutWords(tests::randomTexture(random, {1, 1}, 2));
    const std::string code = tests::codeOf(texture);
    ASSERT_EQ(linesOf(code).size(), 1U);
    for (const std::string start : {"oI2", "I2", "02", "0j2", "0 2", "I02", "02I", "0II2", "0I",
                                    "0I0", "0I?", " I2", "0l0"}) {
        const Harvest harvest =
            harvestCodes("Old Ida says at 10:01: " + start + code.substr(3) + " is all.");
        ASSERT_EQ(harvest.found.size(), 1U) << start;
        EXPECT_EQ(harvest.found[0].texture, texture);
        EXPECT_GE(harvest.found[0].repaired, 1) << start;
    }
}

TEST(Repair, ReadsACodeThatAFalseStartCutsInTwo) {
    const core::Texture texture = tests::usualTexture(6);
    Lines lines = linesOf(tests::codeOf(texture));
    lines[3].insert(0, "0I2 was the start, Ida said\n");
    expectHealed(joined(lines, "\n"), texture, 0);
}

TEST(Repair, TakesNothingThatTwoReadingsContest) {
    // Whatever is confirmed is counted, and everything is confirmed: the answer is still one.
    const std::string code = tests::codeOf(tests::usualTexture(6));
    std::string text = code;
    text[50] = text[50] == 'x' ? 'y' : 'x';
    const GlyphText glyphs = readGlyphs(text);
    const Region all{0, glyphs.glyphs.size()};
    RepairBudget budget;
    std::set<Symbols> confirmed;
    const auto repaired = repairCode(
        glyphs.glyphs, all,
        [&](SymbolSpan s) { return confirmed.emplace(s.begin(), s.end()).second; }, budget);
    ASSERT_TRUE(repaired.has_value());
    EXPECT_EQ(confirmed.size(), 1U);
    EXPECT_FALSE(repairCode(
        glyphs.glyphs, all, [](SymbolSpan) { return false; }, budget));
}

TEST(Repair, StopsWhereItsBudgetEnds) {
    const std::string code = tests::codeOf(tests::usualTexture(6));
    std::string text = code;
    text[50] = text[50] == 'x' ? 'y' : 'x';
    const GlyphText glyphs = readGlyphs(text);
    RepairBudget budget;
    while (budget.spend(std::size_t{1} << 16U)) {
    }
    EXPECT_TRUE(budget.isSpent());
    EXPECT_FALSE(repairCode(
        glyphs.glyphs, {0, glyphs.glyphs.size()}, [](SymbolSpan) { return true; }, budget));
}

// The same check as the long run of tests/soak.
TEST(Repair, NeverGivesAWrongTexture) {
    tests::Random random(107);
    const std::vector<core::Texture> textures = texturesToDamage();
    for (int i = 0; i < 400; ++i) {
        const core::Texture& texture = textures[static_cast<std::size_t>(i % 3)];
        const std::string text = tests::damaged(random, tests::codeOf(texture));
        for (const FoundCode& found : harvestCodes(text).found) {
            ASSERT_EQ(found.texture, texture) << text;
        }
    }
}

}  // namespace
}  // namespace pantile::codec
