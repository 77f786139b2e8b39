#pragma once

// What a damaged line of a code may have been: every line that checks and becomes what stands there
// by one slip of the hand. The line check leaves hardly more than one letter for each place.

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "codec/base58.h"
#include "codec/glyphs.h"

namespace pantile::codec {

/// What one line has to look like.
struct LineForm {
    std::size_t line = 1;
    std::size_t symbols = 0;  ///< With the line check.
    bool endMark = false;

    std::size_t frontMarks() const { return line == 1 ? 2 : 1; }

    /// Letters in all.
    std::size_t size() const { return frontMarks() + symbols + (endMark ? 1 : 0); }
};

enum class SlipKind { Wrong, Missing, Extra, Swapped };

struct Slip {
    SlipKind kind = SlipKind::Wrong;
    std::size_t line = 1;
    std::size_t letter = 1;  ///< In the line as it should stand, marks counted, from 1.
    std::string was;         ///< What stands in the text; empty if a letter is missing.
    std::string is;          ///< What it is read as; empty if a letter is too many.

    /// "line 3, letter 12: q read as g"
    std::string told() const;
};

/// A line read from a text.
struct LineReading {
    Symbols symbols;          ///< With the line check, which fits.
    std::vector<Slip> slips;  ///< None, if the letters are as they should be.
};

/// All readings of `letters` as a line of that form with at most one slip: one letter wrong,
/// missing or too many, or two neighbours swapped. Each reading stands there once.
/// Cost: the square of the line's length.
std::vector<LineReading> readingsOf(std::span<const Glyph> letters, const LineForm& form);

/// Readings with two wrong letters, both of which look like the right ones: what happens to someone
/// who types a line from a picture.
std::vector<LineReading> lookAlikeReadingsOf(std::span<const Glyph> letters, const LineForm& form);

/// Readings of a line that checks, with two neighbours swapped that are 29 apart, which is the one
/// slip that a line check does not find. `symbols` are with the check.
std::vector<LineReading> unnoticedSwapsOf(SymbolSpan symbols, const LineForm& form);

}  // namespace pantile::codec
