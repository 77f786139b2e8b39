#include "board/script_bits.h"

#include <string>

#include <gtest/gtest.h>

#include "support/random.h"

namespace pantile::board {
namespace {

/// What is written, as 0 and 1.
template <typename Write>
std::string written(Write write) {
    ScriptBitWriter out;
    write(out);
    const std::vector<std::uint8_t> bytes = out.bytes();
    std::string text;
    for (std::size_t i = 0; i < out.size(); ++i) {
        text += (bytes[i / 8] << i % 8 & 0x80) != 0 ? '1' : '0';
    }
    return text;
}

std::string numberText(unsigned number, int parameter) {
    return written([&](ScriptBitWriter& out) { out.number(number, parameter); });
}

// Source: ITU-T H.264, clause 9.1, tables 9-1 to 9-3 (Exp-Golomb codes, and signed numbers in
// them); from memory.
TEST(ScriptBits, NumbersAreThePublishedCodes) {
    const std::vector<std::string> codes = {"1",     "010",   "011",     "00100",   "00101",
                                            "00110", "00111", "0001000", "0001001", "0001010"};
    for (unsigned number = 0; number < codes.size(); ++number) {
        EXPECT_EQ(numberText(number, 0), codes[number]);
    }
    const std::vector<int> ways = {0, 1, -1, 2, -2, 3, -3};
    for (std::size_t i = 0; i < ways.size(); ++i) {
        EXPECT_EQ(written([&](ScriptBitWriter& out) { out.wayOnAxis(ways[i], 0); }), codes[i]);
    }
}

// A parameter takes the lowest bits away first and puts them down as they are behind the code of
// the rest: by the definition of these codes.
TEST(ScriptBits, AParameterPutsDownTheLowestBitsAsTheyAre) {
    for (unsigned number = 0; number < 300; ++number) {
        for (int parameter = 0; parameter <= 3; ++parameter) {
            const unsigned low = number % (1U << parameter);
            const std::string rest =
                written([&](ScriptBitWriter& out) { out.bits(low, parameter); });
            EXPECT_EQ(numberText(number, parameter), numberText(number >> parameter, 0) + rest);
            EXPECT_EQ(numberBits(number, parameter),
                      static_cast<int>(numberText(number, parameter).size()));
        }
    }
}

TEST(ScriptBits, BringBackWhatWasPutDown) {
    tests::Random random(5);
    for (int round = 0; round < 200; ++round) {
        std::vector<std::pair<unsigned, int>> numbers;
        ScriptBitWriter out;
        for (int i = random.between(1, 30); i > 0; --i) {
            const int parameter = random.between(0, 15);
            const unsigned most = mostNumber(parameter);
            const unsigned number = random.between(0, 9) == 0
                                        ? most
                                        : static_cast<unsigned>(random.next()) % (most + 1);
            numbers.emplace_back(number, parameter);
            out.number(number, parameter);
        }
        const std::vector<std::uint8_t> bytes = out.bytes();
        ScriptBitReader in(bytes);
        for (const auto& [number, parameter] : numbers) EXPECT_EQ(in.number(parameter), number);
        EXPECT_FALSE(in.brokeOff());
        EXPECT_TRUE(in.tookAll());
    }
}

TEST(ScriptBits, EndInZerosAndThenBreakOff) {
    const std::vector<std::uint8_t> bytes = {0x80, 0x01};
    ScriptBitReader in(bytes);
    EXPECT_TRUE(in.bit());
    EXPECT_FALSE(in.tookAll());
    EXPECT_EQ(in.bits(7), 0U);
    EXPECT_FALSE(in.tookAll()) << "the last byte is not 0";
    EXPECT_EQ(in.bits(8), 1U);
    EXPECT_TRUE(in.tookAll());
    EXPECT_FALSE(in.brokeOff());
    EXPECT_FALSE(in.bit());
    EXPECT_TRUE(in.brokeOff());
}

TEST(ScriptBits, RefuseNumbersThatAreTooLong) {
    const std::vector<std::uint8_t> longest = {0x00, 0x01, 0xFF, 0xFE};
    ScriptBitReader fits(longest);
    EXPECT_EQ(fits.number(0), 65534U);
    EXPECT_FALSE(fits.brokeOff());
    const std::vector<std::uint8_t> longer = {0x00, 0x00, 0xFF, 0xFF, 0xFF};
    ScriptBitReader breaks(longer);
    EXPECT_EQ(breaks.number(0), 0U);
    EXPECT_TRUE(breaks.brokeOff());
}

}  // namespace
}  // namespace pantile::board
