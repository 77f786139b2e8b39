#pragma once

// A text as the reader of codes sees it: base-58 symbols, marks, gaps and line breaks; invisible
// characters gone, full-width forms folded, markup read through.

#include <cstddef>
#include <cstdint>
#include <span>
#include <string_view>
#include <vector>

namespace pantile::codec {

/// 0..57 are symbols; the rest are the constants below.
using Glyph = std::uint8_t;

inline constexpr Glyph kZero = 58;      ///< '0', the mark of a line.
inline constexpr Glyph kZeroLike = 59;  ///< 'O', which is read as that.
inline constexpr Glyph kEye = 60;       ///< 'I', the mark of an end.
inline constexpr Glyph kEyeLike = 61;   ///< 'l', which is read as that.
inline constexpr Glyph kGap = 62;       ///< Anything else, once for each run of it.
inline constexpr Glyph kBreak = 63;     ///< A gap with a line break in it, perhaps a written one.

inline bool isSymbol(Glyph glyph) {
    return glyph < kZero;
}

inline bool isZero(Glyph glyph) {
    return glyph == kZero || glyph == kZeroLike;
}

inline bool isEye(Glyph glyph) {
    return glyph == kEye || glyph == kEyeLike;
}

inline bool isGap(Glyph glyph) {
    return glyph >= kGap;
}

struct GlyphText {
    std::vector<Glyph> glyphs;
    std::vector<std::size_t> lineStarts;  ///< Where each line of the text begins, but the first.

    /// The line of the text, counted from 1, in which a glyph stands.
    std::size_t lineOf(std::size_t glyph) const;
};

/// Cost: linear in the length of `text`; a byte for each character.
GlyphText readGlyphs(std::string_view text);

/// The bytes of `text` at which glyphs begin, given by their numbers in rising order; text.size()
/// for numbers beyond the last. Cost: as readGlyphs.
std::vector<std::size_t> byteOffsets(std::string_view text, std::span<const std::size_t> glyphs);

}  // namespace pantile::codec
