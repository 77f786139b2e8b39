#include "codec/base58.h"

#include <algorithm>
#include <string>
#include <utility>

#include <gtest/gtest.h>

#include "support/random.h"

namespace pantile::codec {
namespace {

using Bytes = std::vector<std::uint8_t>;

std::string blocksOf(const Bytes& bytes) {
    Symbols symbols;
    appendBlocks(symbols, bytes);
    return toText(symbols);
}

/// Base 58 of one whole number, as the draft has it: a '1' for each zero byte in front, then the
/// digits of the number. By long division, in our digits.
std::string wholeNumber(Bytes bytes) {
    const auto firstUsed = std::find_if(bytes.begin(), bytes.end(), [](auto b) { return b != 0; });
    std::string text(static_cast<std::size_t>(firstUsed - bytes.begin()), kBase58Digits[0]);
    std::string digits;
    while (std::any_of(bytes.begin(), bytes.end(), [](auto b) { return b != 0; })) {
        unsigned remainder = 0;
        for (std::uint8_t& byte : bytes) {
            const unsigned value = remainder * 256 + byte;
            byte = static_cast<std::uint8_t>(value / kBase);
            remainder = value % kBase;
        }
        digits += kBase58Digits[remainder];
    }
    return text + std::string(digits.rbegin(), digits.rend());
}

Bytes bytesOf(std::string_view text) {
    return {text.begin(), text.end()};
}

// Source: M. Sporny, 'The Base58 Encoding Scheme', draft-msporny-base58, section 5; the two short
// ones are widely carried in tests (from memory).
const std::vector<std::pair<Bytes, std::string>> kPublished = {
    {bytesOf("Hello World!"), "2NEpo7TZRRrLZSi2U"},
    {bytesOf("The quick brown fox jumps over the lazy dog."),
     "USm3fpXnKG5EUBx2ndxBDMPVciP5hGey2Jh4NDv6gmeo1LkMeiKrLJUUBk6Z"},
    {{0x00, 0x00, 0x28, 0x7F, 0xB4, 0xCD}, "11233QC4"},
    {{0x61}, "2g"},
    {{0x62, 0x62, 0x62}, "a3gV"}};

// The draft's method is another for more than one block; its values hold our digits to their order.
TEST(Base58, HasTheDigitsOfThePublishedValues) {
    for (const auto& [bytes, text] : kPublished) EXPECT_EQ(wholeNumber(bytes), text);
}

// Within one block the two methods differ in nothing but the '1's that fill it in front.
TEST(Base58, BlocksAreThePublishedValuesFilledWithOnes) {
    for (const auto& [bytes, text] : kPublished) {
        if (bytes.size() > 8) continue;
        const std::string block = blocksOf(bytes);
        const auto withoutOnes = [](const std::string& digits) {
            return digits.substr(std::min(digits.size(), digits.find_first_not_of('1')));
        };
        EXPECT_EQ(block.size(), blockSymbols(bytes.size()));
        EXPECT_EQ(withoutOnes(block), withoutOnes(text));
    }
}

TEST(Base58, TakesTheFewestSymbolsThatHoldABlock) {
    for (std::size_t bytes = 1; bytes <= 8; ++bytes) {
        const Bytes most(bytes, 0xFF);
        const std::string digits = wholeNumber(most);
        EXPECT_EQ(blockSymbols(bytes), digits.size()) << bytes;
        EXPECT_EQ(blocksOf(most), digits);
    }
    EXPECT_EQ(blockSymbols(0), 0U);
    EXPECT_EQ(blockSymbols(19), 27U);
}

TEST(Base58, ReadsBackWhatItWrote) {
    tests::Random random(58);
    for (std::size_t size = 0; size < 100; ++size) {
        Bytes bytes(size);
        for (auto& byte : bytes) byte = static_cast<std::uint8_t>(random.between(0, 255));
        Symbols symbols;
        appendBlocks(symbols, bytes);
        EXPECT_EQ(readBlocks(symbols, size), bytes) << size;
        EXPECT_EQ(readBlocks(symbols, size + 1), std::nullopt) << size;
    }
}

TEST(Base58, RefusesBlocksAboveWhatTheirBytesHold) {
    for (std::size_t bytes = 1; bytes <= 8; ++bytes) {
        Symbols symbols;
        appendBlocks(symbols, Bytes(bytes, 0xFF));
        for (std::size_t i = symbols.size(); i > 0; --i) {  // One more than the most.
            if (++symbols[i - 1] < kBase) break;
            symbols[i - 1] = 0;
        }
        EXPECT_EQ(readBlocks(symbols, bytes), std::nullopt) << bytes;
        EXPECT_EQ(readBlocks(Symbols(symbols.size(), 57), bytes), std::nullopt) << bytes;
    }
}

}  // namespace
}  // namespace pantile::codec
