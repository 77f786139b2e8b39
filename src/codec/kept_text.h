#pragma once

// Codes of newer versions cannot be read here, but their text can be kept.

#include <span>
#include <string>

#include "codec/glyphs.h"
#include "codec/pieces.h"

namespace pantile::codec {

/// The lines of the code with an unknown form that begins at `region`, as they were written, with
/// nothing between them: the first one, and all that follow by their numbers.
std::string keptText(std::span<const Glyph> glyphs, Region region);

}  // namespace pantile::codec
