#include "codec/line_readings.h"

#include <algorithm>
#include <set>

#include <gtest/gtest.h>

#include "codec/armour.h"
#include "support/random.h"

namespace pantile::codec {
namespace {

Symbols randomLine(tests::Random& random, const LineForm& form) {
    Symbols symbols;
    while (symbols.size() + 1 < form.symbols) {
        symbols.push_back(static_cast<std::uint8_t>(random.between(0, 57)));
    }
    symbols.push_back(lineCheck(symbols, form.line));
    return symbols;
}

std::vector<Glyph> written(const Symbols& symbols, const LineForm& form) {
    std::vector<Glyph> letters = {kZero};
    if (form.line == 1) letters.push_back(kEye);
    letters.insert(letters.end(), symbols.begin(), symbols.end());
    if (form.endMark) letters.push_back(kEye);
    return letters;
}

/// All lines of that form that check and become `letters` by one slip, by trying every slip on
/// every line that one slip on `letters` gives, whether it checks or not.
std::set<Symbols> bruteForce(const std::vector<Glyph>& letters, const LineForm& form) {
    std::vector<std::vector<Glyph>> lines;
    const auto size = static_cast<std::ptrdiff_t>(letters.size());
    for (std::ptrdiff_t at = 0; at <= size; ++at) {
        for (Glyph glyph = 0; glyph < kGap; ++glyph) {
            std::vector<Glyph> line = letters;
            line.insert(line.begin() + at, glyph);
            lines.push_back(line);
            if (at == size) continue;
            line = letters;
            line[static_cast<std::size_t>(at)] = glyph;
            lines.push_back(line);
        }
        if (at == size) continue;
        std::vector<Glyph> line = letters;
        line.erase(line.begin() + at);
        lines.push_back(line);
        if (at + 1 == size) continue;
        line = letters;
        std::swap(line[static_cast<std::size_t>(at)], line[static_cast<std::size_t>(at) + 1]);
        lines.push_back(line);
    }
    std::set<Symbols> right;
    for (const auto& line : lines) {
        if (line.size() != form.size()) continue;
        const auto begin = line.begin() + static_cast<std::ptrdiff_t>(form.frontMarks());
        const Symbols symbols(begin, begin + static_cast<std::ptrdiff_t>(form.symbols));
        if (!std::all_of(symbols.begin(), symbols.end(), isSymbol)) continue;
        const bool marks = isZero(line[0]) && (form.line > 1 || isEye(line[1])) &&
                           (!form.endMark || isEye(line.back()));
        if (marks && toldLineNumber(symbols) == form.line % kBase) right.insert(symbols);
    }
    return right;
}

TEST(LineReadings, AreAllThatOneSlipCanHaveBeen) {
    tests::Random random(311);
    for (const LineForm form :
         {LineForm{1, 12, true}, LineForm{1, 9, false}, LineForm{2, 10, false},
          LineForm{60, 11, true}, LineForm{7, 2, true}}) {
        for (int round = 0; round < 40; ++round) {
            std::vector<Glyph> letters = written(randomLine(random, form), form);
            const auto at =
                static_cast<std::size_t>(random.between(0, static_cast<int>(letters.size()) - 2));
            const auto place = letters.begin() + static_cast<std::ptrdiff_t>(at);
            switch (round % 4) {
                case 0:
                    *place = static_cast<Glyph>(random.between(0, kGap - 1));
                    break;
                case 1:
                    letters.erase(place);
                    break;
                case 2:
                    letters.insert(place, *place);
                    break;
                default:
                    std::swap(*place, *(place + 1));
            }
            const std::vector<LineReading> readings = readingsOf(letters, form);
            if (readings.size() == 1 && readings[0].slips.empty()) continue;  // No slip at all.
            std::set<Symbols> listed;
            for (const LineReading& reading : readings) {
                EXPECT_TRUE(listed.insert(reading.symbols).second);
                EXPECT_EQ(reading.slips.size(), 1U);
            }
            EXPECT_EQ(listed, bruteForce(letters, form));
        }
    }
}

TEST(LineReadings, TakeALineAsItStandsIfItChecks) {
    tests::Random random(312);
    const LineForm form{3, 32, false};
    const Symbols symbols = randomLine(random, form);
    const auto readings = readingsOf(written(symbols, form), form);
    ASSERT_EQ(readings.size(), 1U);
    EXPECT_EQ(readings[0].symbols, symbols);
    EXPECT_TRUE(readings[0].slips.empty());
}

TEST(LineReadings, OfLettersFarTooFewOrManyAreNone) {
    const LineForm form{3, 32, false};
    EXPECT_TRUE(readingsOf(std::vector<Glyph>{}, form).empty());
    EXPECT_TRUE(readingsOf(std::vector<Glyph>(31, Glyph{5}), form).empty());
    EXPECT_TRUE(readingsOf(std::vector<Glyph>(35, Glyph{5}), form).empty());
}

TEST(LineReadings, FindTwoLookAlikes) {
    tests::Random random(313);
    const LineForm form{3, 32, false};
    const auto symbolOf = [](char c) { return static_cast<std::uint8_t>(kBase58Digits.find(c)); };
    for (int round = 0; round < 50; ++round) {
        Symbols symbols = randomLine(random, form);
        symbols[4] = symbolOf('S');
        symbols[20] = symbolOf('o');
        symbols.back() = lineCheck(SymbolSpan(symbols).first(31), form.line);
        std::vector<Glyph> letters = written(symbols, form);
        letters[5] = symbolOf('5');
        letters[21] = kZeroLike;
        const auto readings = lookAlikeReadingsOf(letters, form);
        EXPECT_TRUE(std::any_of(readings.begin(), readings.end(), [&](const LineReading& reading) {
            return reading.symbols == symbols && reading.slips.size() == 2;
        }));
        for (const LineReading& reading : readings) {
            EXPECT_EQ(toldLineNumber(reading.symbols), 3U);
        }
    }
}

TEST(LineReadings, FindSwapsThatTheCheckDoesNot) {
    const LineForm form{2, 6, false};
    Symbols symbols = {3, 32, 7, 50, 21};
    symbols.push_back(lineCheck(symbols, 2));
    const auto readings = unnoticedSwapsOf(symbols, form);
    ASSERT_EQ(readings.size(), 2U);
    for (const LineReading& reading : readings) EXPECT_EQ(toldLineNumber(reading.symbols), 2U);
    EXPECT_EQ(readings[0].symbols[0], 32);
    EXPECT_EQ(readings[1].symbols[3], 21);
}

}  // namespace
}  // namespace pantile::codec
