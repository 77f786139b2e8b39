#pragma once

// Pieces of a text that may be lines of a code: what follows a line mark, up to where the line
// seems to end. A text can be cut into pieces in several ways; the check value decides which was
// right.

#include <cstddef>
#include <span>
#include <vector>

#include "codec/base58.h"
#include "codec/glyphs.h"

namespace pantile::codec {

/// Glyphs begin..end-1.
struct Region {
    std::size_t begin = 0;
    std::size_t end = 0;
};

/// Ways to cut, from timid to bold.
enum class Cut {
    AtGaps,        ///< A piece ends at anything that is no letter or digit.
    AtMarks,       ///< Gaps and breaks inside a piece are left out.
    LastWords,     ///< The same, taking only the last word of each line of the text.
    LongestWords,  ///< The same with the longest word.
};

struct Piece {
    std::size_t glyph = 0;  ///< Where its line mark stands.
    std::size_t first = 0;  ///< Its first symbol in PieceList::symbols.
    std::size_t count = 0;
    bool ended = false;  ///< An end mark stands right behind it.
};

struct PieceList {
    Symbols symbols;
    std::vector<Piece> pieces;

    SymbolSpan symbolsOf(const Piece& piece) const {
        return SymbolSpan(symbols).subspan(piece.first, piece.count);
    }

    /// Whether the first `count` symbols of `piece` check as a line of that number.
    bool checksAs(const Piece& piece, std::size_t count, std::size_t line) const;
};

/// The pieces of `region`. If it begins with a code's start, the first piece is its first line,
/// without marks. Cost: linear in the region.
PieceList piecesOf(std::span<const Glyph> glyphs, Region region, Cut cut);

}  // namespace pantile::codec
