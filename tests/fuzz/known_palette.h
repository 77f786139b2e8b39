#pragma once

// The one palette that the targets know by its fingerprint: that of the frozen vector
// by_fingerprint.

#include <optional>

#include "core/palette.h"

namespace pantile::fuzz {

inline std::optional<core::Palette> knownPaletteOf(core::Fingerprint fingerprint) {
    static const core::Palette palette = *core::Palette::create(
        {{0x2B, 0x2E, 0x33}, {0x6E, 0x5A, 0x3C}, {0xB9, 0xA0, 0x6B}, {0xE8, 0xE4, 0xD8}});
    if (fingerprint != palette.fingerprint()) return std::nullopt;
    return palette;
}

}  // namespace pantile::fuzz
