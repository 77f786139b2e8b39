#include "core/fingerprint.h"

#include <string_view>

#include <gtest/gtest.h>

namespace pantile::core {
namespace {

Fingerprint of(std::string_view text) {
    FingerprintBuilder builder;
    for (const char c : text) builder.addByte(static_cast<std::uint8_t>(c));
    return builder.finish();
}

// Source: G. Fowler, L. Noll, K.-P. Vo, D. Eastlake, 'The FNV Non-Cryptographic Hash Algorithm',
// test values of FNV-1a, 64 bits; from memory.
TEST(Fingerprint, AgreesWithPublishedValues) {
    EXPECT_EQ(toHex(of("")), "cbf29ce484222325");
    EXPECT_EQ(toHex(of("a")), "af63dc4c8601ec8c");
    EXPECT_EQ(toHex(of("foobar")), "85944171f73967e8");
}

}  // namespace
}  // namespace pantile::core
