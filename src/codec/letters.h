#pragma once

// A region of a text without its gaps: the letters that may be those of a code, and where words
// begin among them.

#include <cstddef>
#include <span>
#include <vector>

#include "codec/glyphs.h"
#include "codec/pieces.h"

namespace pantile::codec {

struct Letters {
    std::vector<Glyph> glyphs;        ///< Marks and symbols only.
    std::vector<std::size_t> places;  ///< Where each stands among the glyphs of the text.

    std::size_t size() const { return glyphs.size(); }

    /// Whether a gap stands in front of that letter, or nothing at all.
    bool beginsWord(std::size_t letter) const {
        return letter == 0 || places[letter] != places[letter - 1] + 1;
    }

    /// Whether a word ends in front of that letter; it may be the one behind the last.
    bool endsWord(std::size_t letter) const { return letter >= size() || beginsWord(letter); }

    std::span<const Glyph> range(std::size_t begin, std::size_t end) const {
        return std::span(glyphs).subspan(begin, end - begin);
    }
};

inline Letters lettersOf(std::span<const Glyph> glyphs, Region region) {
    Letters letters;
    letters.glyphs.reserve(region.end - region.begin);
    letters.places.reserve(region.end - region.begin);
    for (std::size_t at = region.begin; at < region.end; ++at) {
        if (isGap(glyphs[at])) continue;
        letters.glyphs.push_back(glyphs[at]);
        letters.places.push_back(at);
    }
    return letters;
}

}  // namespace pantile::codec
