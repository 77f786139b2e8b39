#include "core/colour.h"

#include <array>
#include <charconv>
#include <cstddef>

#include "core/text.h"

namespace pantile::core {

std::string toHex(Rgb8 colour) {
    constexpr std::string_view kDigits = "0123456789abcdef";
    std::string hex = "#";
    for (const std::uint8_t channel : {colour.r, colour.g, colour.b}) {
        hex += kDigits[channel >> 4U];
        hex += kDigits[channel & 15U];
    }
    return hex;
}

Result<Rgb8> parseHexColour(std::string_view text) {
    const Error malformed{ErrorKind::InvalidInput, "'" + excerpt(text) + "' is not a colour",
                          "write a colour as #rrggbb, such as #2f6f5e"};
    if (text.size() != 7 || text[0] != '#') return malformed;
    std::array<std::uint8_t, 3> channels{};
    for (std::size_t i = 0; i < channels.size(); ++i) {
        const char* first = text.data() + 1 + 2 * i;
        const auto [end, problem] = std::from_chars(first, first + 2, channels[i], 16);
        if (problem != std::errc() || end != first + 2) return malformed;
    }
    return Rgb8{channels[0], channels[1], channels[2]};
}

}  // namespace pantile::core
