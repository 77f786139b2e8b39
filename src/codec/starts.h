#pragma once

// Places in a text where a code may begin. A start mark alone is no code: what follows it decides.

#include <cstddef>
#include <span>
#include <vector>

#include "codec/base58.h"
#include "codec/glyphs.h"
#include "codec/pieces.h"

namespace pantile::codec {

enum class StartKind {
    Known,        ///< The start mark and a form number that is known here.
    Newer,        ///< A first line that checks, with a form number not known here.
    Doubtful,     ///< Marks and length of a first line, whose form number may be damaged.
    CaseChanged,  ///< A first line all in small letters.
};

struct Start {
    std::size_t glyph = 0;
    StartKind kind = StartKind::Known;
    /// It stands as codes are written: marks unfolded, and at the beginning of a word.
    bool wellFormed = false;
    std::size_t symbols = 0;  ///< Symbols right behind the mark, counted up to 40.
    bool ended = false;       ///< An end mark follows right behind them.
    std::size_t letters = 0;  ///< Symbols and marks right behind the mark, counted up to 40.
    bool endsLine = false;    ///< Nothing follows those on the line of the text.
};

/// Cost: linear in the number of glyphs.
std::vector<Start> findStarts(std::span<const Glyph> glyphs);

/// A place where a first line stands and checks, but its start mark is damaged.
struct NearStart {
    std::size_t glyph = 0;   ///< The mark or what is left of it.
    std::size_t resume = 0;  ///< The glyph from which on the first line is right.
    Symbols front;           ///< What should stand in front of that, marks aside.
};

/// All places in `region` that become a first line that checks, of a known form, by one slip in
/// `0I` or the form symbol. One in 58 of those that look so does it by chance.
/// Cost: linear in the region.
std::vector<NearStart> findNearStarts(std::span<const Glyph> glyphs, Region region);

enum class LetterCase { Mixed, Small, Capital };

/// Whether the letters of a long word behind a start mark are all of one case, as no code's are.
LetterCase caseBehind(std::span<const Glyph> glyphs, std::size_t start);

}  // namespace pantile::codec
