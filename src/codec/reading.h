#pragma once

// Reads the code that begins at a start, if it is undamaged, whatever the text did to its lines.

#include <cstddef>
#include <optional>
#include <span>

#include "codec/armour.h"
#include "codec/glyphs.h"
#include "codec/pieces.h"

namespace pantile::codec {

struct ReadCode {
    Symbols symbols;  ///< As openArmour takes them; their check value fits.
    core::Result<OpenedArmour> opened;
    std::size_t end = 0;  ///< A glyph near its end, not behind it.
};

/// The shape that the head of the code promises with which `region` begins, gaps left out; nothing
/// if it is cut short.
std::optional<CodeShape> promisedShape(std::span<const Glyph> glyphs, Region region);

/// Tries the ways to put lines together from timid to bold; nothing if none gives a code whose
/// check value fits. Cost: linear in the region.
std::optional<ReadCode> readCode(std::span<const Glyph> glyphs, Region region);

}  // namespace pantile::codec
