#include "core/fingerprint.h"

#include <string_view>

namespace pantile::core {

std::string toHex(Fingerprint fingerprint) {
    constexpr std::string_view kDigits = "0123456789abcdef";
    std::string hex;
    for (int shift = 60; shift >= 0; shift -= 4) hex += kDigits[(fingerprint.value >> shift) & 15U];
    return hex;
}

}  // namespace pantile::core
