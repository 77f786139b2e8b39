#include "codec/varint.h"

#include <cstddef>

namespace pantile::codec {
namespace {

constexpr std::size_t kMaxVarintBytes = 4;  // Far more than any length in a code needs.

}  // namespace

void appendVarint(std::vector<std::uint8_t>& bytes, std::uint32_t value) {
    for (; value >= 0x80U; value >>= 7U) {
        bytes.push_back(static_cast<std::uint8_t>(0x80U | (value & 0x7FU)));
    }
    bytes.push_back(static_cast<std::uint8_t>(value));
}

std::optional<std::uint32_t> takeVarint(std::span<const std::uint8_t>& bytes) {
    std::uint32_t value = 0;
    for (std::size_t i = 0; i < bytes.size() && i < kMaxVarintBytes; ++i) {
        value |= (bytes[i] & 0x7FU) << (7 * i);
        if ((bytes[i] & 0x80U) != 0) continue;
        const bool overlong = i > 0 && bytes[i] == 0;
        if (overlong) return std::nullopt;
        bytes = bytes.subspan(i + 1);
        return value;
    }
    return std::nullopt;
}

}  // namespace pantile::codec
