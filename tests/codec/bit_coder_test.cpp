#include "codec/bit_coder.h"

#include <cmath>

#include <gtest/gtest.h>

#include "support/random.h"

namespace pantile::codec {
namespace {

struct Decision {
    bool bit;
    Probability yes;
};

std::vector<Decision> randomDecisions(tests::Random& random) {
    std::vector<Decision> decisions;
    for (int count = random.between(0, 400); count > 0; --count) {
        const auto yes = static_cast<Probability>(random.between(0, 65536));
        const bool bit = random.between(0, 65535) < static_cast<int>(yes);
        decisions.push_back({bit, yes});
    }
    return decisions;
}

TEST(BitCoder, ReadsWhatItWrote) {
    tests::Random random(301);
    for (int round = 0; round < 500; ++round) {
        const std::vector<Decision> decisions = randomDecisions(random);
        BitCoder writer;
        for (const Decision& decision : decisions) writer.code(decision.bit, decision.yes);
        const std::vector<std::uint8_t> bytes = writer.finish();
        EXPECT_TRUE(bytes.empty() || bytes.back() != 0);
        BitCoder reader(bytes);
        for (const Decision& decision : decisions) {
            ASSERT_EQ(reader.code(false, decision.yes), decision.bit) << round;
        }
        EXPECT_EQ(reader.finish(), bytes) << round;
    }
}

// Of all numbers between low and high the one with the fewest bytes, and of these the least.
TEST(BitCoder, SaysDecisionsInTheFewestBytes) {
    EXPECT_TRUE(BitCoder().finish().empty());
    BitCoder one;
    one.codeEven(false);  // The upper half.
    EXPECT_EQ(one.finish(), (std::vector<std::uint8_t>{0x80}));
    BitCoder bits;
    bits.codeNumber(0xA5, 8);
    EXPECT_EQ(bits.finish(), (std::vector<std::uint8_t>{0x5A}));
}

// Shannon, "A Mathematical Theory of Communication" (1948): no code is shorter in the mean than the
// sum of -log2 of the probabilities; an arithmetic code is longer by two bytes at most.
TEST(BitCoder, ComesCloseToTheEntropy) {
    tests::Random random(302);
    for (int round = 0; round < 200; ++round) {
        const std::vector<Decision> decisions = randomDecisions(random);
        BitCoder writer;
        double bits = 0;
        for (const Decision& decision : decisions) {
            writer.code(decision.bit, decision.yes);
            const double yes = std::clamp(decision.yes / 65536.0, 24 / 65536.0, 1 - 24 / 65536.0);
            bits -= std::log2(decision.bit ? yes : 1 - yes);
        }
        EXPECT_LE(static_cast<double>(writer.finish().size()), bits / 8 + 2) << round;
    }
}

TEST(BitCoder, WritesNumbersAndCounts) {
    BitCoder writer;
    for (std::uint32_t i = 0; i < 300; ++i) {
        writer.codeNumber(i, 9);
        writer.codeCount(i + 1);
    }
    writer.codeCount(65535);
    writer.codeNumber(0xFFFFFFFFU, 32);
    const std::vector<std::uint8_t> bytes = writer.finish();
    BitCoder reader(bytes);
    for (std::uint32_t i = 0; i < 300; ++i) {
        ASSERT_EQ(reader.codeNumber(0, 9), i);
        ASSERT_EQ(reader.codeCount(1), i + 1);
    }
    EXPECT_EQ(reader.codeCount(1), 65535U);
    EXPECT_EQ(reader.codeNumber(0, 32), 0xFFFFFFFFU);
}

TEST(BitCoder, ToldApartFromWhatAnEncoderWrites) {
    BitCoder writer;
    for (int i = 0; i < 40; ++i) writer.codeEven(i % 3 == 0);
    std::vector<std::uint8_t> longer = writer.finish();
    longer.push_back(1);
    BitCoder reader(longer);
    for (int i = 0; i < 40; ++i) EXPECT_EQ(reader.codeEven(false), i % 3 == 0);
    EXPECT_NE(reader.finish(), longer);
}

}  // namespace
}  // namespace pantile::codec
