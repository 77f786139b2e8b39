#pragma once

// Places in a text where a code may begin. A start mark alone is no code: what follows it decides.

#include <cstddef>
#include <span>
#include <vector>

#include "codec/glyphs.h"

namespace pantile::codec {

enum class StartKind {
    Whole,        ///< The start mark and the form number of one whole code.
    Newer,        ///< A first line that checks, with a form number not known here.
    Doubtful,     ///< Marks and length of a first line, whose form number may be damaged.
    CaseChanged,  ///< A first line all in small letters.
};

struct Start {
    std::size_t glyph = 0;
    StartKind kind = StartKind::Whole;
    /// It stands as codes are written: marks unfolded, and at the beginning of a word.
    bool wellFormed = false;
    std::size_t symbols = 0;  ///< Symbols right behind the mark, counted up to 40.
    bool ended = false;       ///< An end mark follows right behind them.
    std::size_t letters = 0;  ///< Symbols and marks right behind the mark, counted up to 40.
    bool endsLine = false;    ///< Nothing follows those on the line of the text.
};

/// Cost: linear in the number of glyphs.
std::vector<Start> findStarts(std::span<const Glyph> glyphs);

enum class LetterCase { Mixed, Small, Capital };

/// Whether the letters of a long word behind a start mark are all of one case, as no code's are.
LetterCase caseBehind(std::span<const Glyph> glyphs, std::size_t start);

}  // namespace pantile::codec
