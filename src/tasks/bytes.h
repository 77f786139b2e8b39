#pragma once

// Between text and bytes: files hold both.

#include <cstdint>
#include <span>
#include <string_view>
#include <vector>

namespace pantile::tasks {

using Bytes = std::vector<std::uint8_t>;

/// The bytes of `text`, where it lies.
inline std::span<const std::uint8_t> asBytes(std::string_view text) {
    return {reinterpret_cast<const std::uint8_t*>(text.data()), text.size()};
}

/// A copy of its own.
inline Bytes bytesOf(std::string_view text) {
    return {text.begin(), text.end()};
}

}  // namespace pantile::tasks
