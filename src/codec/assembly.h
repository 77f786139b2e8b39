#pragma once

// Puts the lines of a code together from the pieces of a text. Each way takes only lines whose
// checks fit; whether they are the right ones, the check value of the whole decides.

#include <cstddef>
#include <optional>
#include <span>

#include "codec/base58.h"
#include "codec/pieces.h"

namespace pantile::codec {

struct Assembly {
    Symbols symbols;      ///< As openArmour takes them.
    std::size_t end = 0;  ///< A glyph near the end of the last line taken, not behind it.
};

/// Line after line as they follow in the text, others between them left out.
std::optional<Assembly> assembleInOrder(const PieceList& list);

/// By the numbers that the lines tell, in whatever order they stand; up to 57 lines.
std::optional<Assembly> assembleByNumber(const PieceList& list);

/// From the plain sequence of symbols, as if there were no marks at all but the first two.
std::optional<Assembly> assembleWithoutMarks(std::span<const Glyph> glyphs, Region region);

}  // namespace pantile::codec
