#include "codec/varint.h"

#include <gtest/gtest.h>

#include "support/random.h"

namespace pantile::codec {
namespace {

using Bytes = std::vector<std::uint8_t>;

Bytes written(std::uint32_t value) {
    Bytes bytes;
    appendVarint(bytes, value);
    return bytes;
}

TEST(Varint, WritesSevenBitsAByteLowOnesFirst) {
    EXPECT_EQ(written(0), (Bytes{0x00}));
    EXPECT_EQ(written(127), (Bytes{0x7F}));
    EXPECT_EQ(written(128), (Bytes{0x80, 0x01}));
    // The worked example of DWARF 5, section 7.6 (from memory).
    EXPECT_EQ(written(624485), (Bytes{0xE5, 0x8E, 0x26}));
}

TEST(Varint, ReadsBackWhatItWroteAndLeavesTheRest) {
    tests::Random random(21);
    for (int i = 0; i < 2000; ++i) {
        const auto value = static_cast<std::uint32_t>(random.next() >> random.between(36, 63));
        Bytes bytes = written(value);
        bytes.push_back(0xAB);
        std::span<const std::uint8_t> rest = bytes;
        EXPECT_EQ(takeVarint(rest), value);
        ASSERT_EQ(rest.size(), 1U) << value;
        EXPECT_EQ(rest.front(), 0xAB);
    }
}

TEST(Varint, RefusesCutLongAndOverlongForms) {
    for (const Bytes& bytes : {Bytes{}, Bytes{0x80}, Bytes{0x80, 0x00}, Bytes{0xFF, 0x80, 0x00},
                               Bytes{0x80, 0x80, 0x80, 0x80, 0x01}}) {
        std::span<const std::uint8_t> rest = bytes;
        EXPECT_EQ(takeVarint(rest), std::nullopt);
        EXPECT_EQ(rest.size(), bytes.size());
    }
}

}  // namespace
}  // namespace pantile::codec
