#include "codec/armour.h"

#include <algorithm>

#include <gtest/gtest.h>

#include "code_support.h"
#include "codec/checksum.h"
#include "support/matchers.h"

namespace pantile::codec {
namespace {

using Bytes = std::vector<std::uint8_t>;
using core::ErrorKind;
using tests::failsWith;
using tests::isOk;

Bytes randomBytes(tests::Random& random, std::size_t size) {
    Bytes bytes(size);
    for (auto& byte : bytes) byte = static_cast<std::uint8_t>(random.next());
    return bytes;
}

/// The symbols of a code's lines, marks and line checks taken away.
Symbols symbolsIn(const std::string& code) {
    Symbols symbols;
    for (const std::string& line : tests::linesOf(code)) {
        Symbols ofLine;
        for (const char c : line) {
            const std::size_t value = kBase58Digits.find(c);
            if (value != std::string_view::npos) ofLine.push_back(static_cast<std::uint8_t>(value));
        }
        symbols.insert(symbols.end(), ofLine.begin(), ofLine.end() - 1);
    }
    return symbols;
}

/// `symbols` with the right check value put behind them in place of the last six.
Symbols rechecked(Symbols symbols) {
    for (std::size_t i = 0; i < kCheckSymbols; ++i) symbols.pop_back();
    appendNumber(symbols, crc32Of(toText(symbols)), kCheckSymbols);
    return symbols;
}

TEST(Armour, LaysLinesOfAtMost34LettersWithTheirMarks) {
    tests::Random random(41);
    for (std::size_t size = 0; size < 400; ++size) {
        const std::string code = *armoured(randomBytes(random, size));
        const std::vector<std::string> lines = tests::linesOf(code);
        const CodeShape shape = CodeShape::of(size);
        ASSERT_EQ(lines.size(), shape.lines);
        EXPECT_TRUE(code.starts_with("0I2"));
        EXPECT_EQ(std::count(code.begin(), code.end(), 'I'), 2);
        for (std::size_t i = 0; i < lines.size(); ++i) {
            const bool last = i + 1 == lines.size();
            EXPECT_LE(lines[i].size(), 34U);
            EXPECT_TRUE(last || lines[i].size() == 33U) << size;
            EXPECT_EQ(lines[i][0], '0');
            EXPECT_EQ(lines[i].back() == 'I', last);
            EXPECT_EQ(lines[i].size(),
                      1 + shape.lineSymbols(i + 1) + (i == 0 ? 1 : 0) + (last ? 1 : 0));
        }
        EXPECT_EQ(symbolsIn(code).size(), shape.symbols);
    }
}

TEST(Armour, OpensWhatItClosed) {
    tests::Random random(42);
    for (std::size_t size = 0; size < 300; ++size) {
        const Bytes bytes = randomBytes(random, size);
        const auto opened = openArmour(symbolsIn(*armoured(bytes)));
        ASSERT_THAT(opened, isOk());
        EXPECT_EQ(opened->bytes, bytes);
        EXPECT_EQ(opened->form, ArmourForm::Whole);
    }
}

TEST(Armour, TellsItsCharactersBeforehand) {
    tests::Random random(48);
    for (const std::size_t size : {0U, 13U, 14U, 15U, 40U, 400U}) {
        EXPECT_EQ(armoured(randomBytes(random, size))->size(), CodeShape::of(size).characters());
    }
}

TEST(Armour, OpensAPartAsOne) {
    tests::Random random(49);
    const Bytes bytes = randomBytes(random, 60);
    const std::string code = *armoured(bytes, ArmourForm::Part);
    EXPECT_TRUE(code.starts_with("0I3"));
    const auto opened = openArmour(symbolsIn(code));
    ASSERT_THAT(opened, isOk());
    EXPECT_EQ(opened->form, ArmourForm::Part);
    EXPECT_EQ(opened->bytes, bytes);
}

TEST(Armour, WritesTheLinesOfItsSymbols) {
    tests::Random random(50);
    const std::string code = *armoured(randomBytes(random, 200));
    EXPECT_EQ(writtenLines(symbolsIn(code)), code);
}

TEST(Armour, RefusesMoreBytesThanItsLengthCanCount) {
    EXPECT_THAT(armoured(Bytes(kMaxArmouredBytes)), isOk());
    EXPECT_THAT(armoured(Bytes(kMaxArmouredBytes + 1)), failsWith(ErrorKind::TooLarge, "195112"));
}

// The bound of docs/code-format.md, section 'Limits'.
TEST(Armour, HoldsTheLargestContainer) {
    const std::size_t words = 3 * (2 + 480) + 1 + 64 * (2 + 160);
    EXPECT_LE(5 + 1 + 768 + words + 1 + 131072, kMaxArmouredBytes);
}

TEST(Armour, RefusesAnyOneChangedSymbol) {
    tests::Random random(43);
    const Symbols symbols = symbolsIn(*armoured(randomBytes(random, 20)));
    for (std::size_t at = 0; at < symbols.size(); ++at) {
        for (unsigned value = 0; value < kBase; ++value) {
            if (symbols[at] == value) continue;
            Symbols other = symbols;
            other[at] = static_cast<std::uint8_t>(value);
            EXPECT_THAT(openArmour(other), failsWith(ErrorKind::ChecksumMismatch, ""));
        }
    }
}

TEST(Armour, RefusesForgedLengthsAndBlocksBehindARightCheckValue) {
    tests::Random random(44);
    const Symbols symbols = symbolsIn(*armoured(randomBytes(random, 20)));
    for (const std::uint8_t length : Symbols{0, 1, 19, 21, 57}) {
        Symbols other = symbols;
        other[3] = length;
        EXPECT_THAT(openArmour(rechecked(other)), failsWith(ErrorKind::Corrupt, "does not fit"));
    }
    Symbols block = symbols;
    std::fill_n(block.begin() + kHeadSymbols, 11, std::uint8_t{57});
    EXPECT_THAT(openArmour(rechecked(block)), failsWith(ErrorKind::Corrupt, "block"));
    EXPECT_THAT(openArmour(Symbols(9, 1)), failsWith(ErrorKind::Corrupt, "cut short"));
}

TEST(Armour, NamesAFormThatIsNotKnown) {
    tests::Random random(45);
    Symbols symbols = symbolsIn(*armoured(randomBytes(random, 20)));
    symbols[0] = 5;
    EXPECT_THAT(
        openArmour(rechecked(symbols)),
        failsWith(ErrorKind::Unsupported, "made by a newer Pantile: the code is of form 5"));
}

TEST(LineCheck, TellsTheNumberOfTheLine) {
    tests::Random random(46);
    for (std::size_t line = 1; line < 200; ++line) {
        Symbols symbols;
        for (int i = random.between(1, 31); i > 0; --i) {
            symbols.push_back(static_cast<std::uint8_t>(random.between(0, 57)));
        }
        symbols.push_back(lineCheck(symbols, line));
        EXPECT_EQ(toldLineNumber(symbols), line % kBase);
    }
}

TEST(LineCheck, FindsEveryOneChangedSymbol) {
    tests::Random random(47);
    Symbols symbols;
    for (int i = 0; i < 31; ++i)
        symbols.push_back(static_cast<std::uint8_t>(random.between(0, 57)));
    symbols.push_back(lineCheck(symbols, 5));
    for (std::uint8_t& symbol : symbols) {
        const std::uint8_t right = symbol;
        for (std::uint8_t value = 0; value < kBase; ++value) {
            symbol = value;
            EXPECT_EQ(toldLineNumber(symbols) == 5, value == right);
        }
        symbol = right;
    }
}

// What docs/code-format.md says of it: all swaps but those of two symbols 29 apart.
TEST(LineCheck, FindsSwappedNeighboursUnlessTheyAre29Apart) {
    for (std::size_t at = 0; at + 2 < 31; ++at) {
        for (std::uint8_t left = 0; left < kBase; ++left) {
            for (std::uint8_t right = 0; right < kBase; ++right) {
                if (left == right) continue;
                Symbols symbols(31, 7);
                symbols[at] = left;
                symbols[at + 1] = right;
                symbols.push_back(lineCheck(symbols, 3));
                std::swap(symbols[at], symbols[at + 1]);
                const bool passes = toldLineNumber(symbols) == 3;
                ASSERT_EQ(passes, std::max(left, right) - std::min(left, right) == 29);
            }
        }
    }
}

}  // namespace
}  // namespace pantile::codec
