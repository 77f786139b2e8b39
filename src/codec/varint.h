#pragma once

// Whole numbers in seven bits a byte, low bits first, the top bit set on all but the last byte
// (LEB128). Each number has one form: the shortest. Authority: docs/code-format.md.

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

namespace pantile::codec {

void appendVarint(std::vector<std::uint8_t>& bytes, std::uint32_t value);

/// Takes a number off the front of `bytes`. Nothing, and `bytes` as it was, if it is cut short, not
/// in its shortest form, or above 2^28 - 1.
std::optional<std::uint32_t> takeVarint(std::span<const std::uint8_t>& bytes);

}  // namespace pantile::codec
