#include "codec/checksum.h"

#include <string>

#include <gtest/gtest.h>

#include "support/random.h"

namespace pantile::codec {
namespace {

/// CRC-32 by its definition, bit after bit. Source: RFC 1952, section 8.
std::uint32_t bitwise(std::string_view bytes) {
    std::uint32_t crc = 0xFFFFFFFFU;
    for (const char c : bytes) {
        crc ^= static_cast<unsigned char>(c);
        for (int bit = 0; bit < 8; ++bit) crc = (crc >> 1U) ^ ((crc & 1U) != 0 ? 0xEDB88320U : 0);
    }
    return ~crc;
}

// Source: G. Cook, 'Catalogue of parametrised CRC algorithms', CRC-32/ISO-HDLC, its check value.
TEST(Checksum, IsThePublishedValueOfNineDigits) {
    EXPECT_EQ(crc32Of("123456789"), 0xCBF43926U);
    EXPECT_EQ(crc32Of(""), 0U);
}

TEST(Checksum, IsTheBitwiseDefinition) {
    std::string text;
    for (int i = 0; i < 300; ++i) {
        EXPECT_EQ(crc32Of(text), bitwise(text)) << i;
        text += static_cast<char>(i * 7);
    }
}

TEST(CrcShift, TellsWhatAChangeBecomesBehindMoreBytes) {
    tests::Random random(51);
    const auto letters = [&](std::size_t size) {
        std::string text(size, ' ');
        for (char& c : text) c = static_cast<char>(random.between(32, 126));
        return text;
    };
    for (const std::size_t behind : {0U, 1U, 5U, 31U, 300U, 70000U}) {
        const std::string one = letters(31);
        const std::string other = letters(31);
        const std::string rest = letters(behind);
        EXPECT_EQ(crc32Of(one + rest) ^ crc32Of(other + rest),
                  CrcShift(behind)(crc32Of(one) ^ crc32Of(other)));
    }
}

}  // namespace
}  // namespace pantile::codec
