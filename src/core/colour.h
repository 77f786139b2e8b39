#pragma once

// Colours as they are stored: 8-bit sRGB.

#include <compare>
#include <cstdint>
#include <string>
#include <string_view>

#include "core/result.h"

namespace pantile::core {

struct Rgb8 {
    std::uint8_t r = 0;
    std::uint8_t g = 0;
    std::uint8_t b = 0;
    // NOLINTNEXTLINE(modernize-use-nullptr): version 14 takes the 0 inside for a null pointer.
    auto operator<=>(const Rgb8&) const = default;
};

/// "#rrggbb" in lower case.
std::string toHex(Rgb8 colour);

/// Reads "#rrggbb", upper or lower case. Errors: InvalidInput with the text.
Result<Rgb8> parseHexColour(std::string_view text);

}  // namespace pantile::core
