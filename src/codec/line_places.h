#pragma once

// Where the lines of a damaged code lie among the letters of a text: the ones that check, and the
// stretches in which the others must be.

#include <cstddef>
#include <optional>
#include <vector>

#include "codec/armour.h"
#include "codec/letters.h"
#include "codec/line_readings.h"

namespace pantile::codec {

/// Letters begin..end-1.
struct LetterRange {
    std::size_t begin = 0;
    std::size_t end = 0;

    std::size_t size() const { return end - begin; }
};

/// Damaged lines that follow one another, and all that stands between the lines around them.
struct DamagedLines {
    std::size_t first = 1;
    std::size_t count = 1;
    LetterRange letters;
    bool trailing = false;  ///< Nothing tells where they end.
};

struct IntactLine {
    std::size_t line = 1;
    std::size_t symbols = 0;  ///< Its first symbol among the letters.

    bool operator==(const IntactLine&) const = default;
};

struct LinePlaces {
    std::vector<IntactLine> intact;  ///< Rising.
    std::vector<DamagedLines> damaged;
    std::size_t end = 0;  ///< Where the last line ends, at the earliest.
};

/// More damaged lines than that cannot be put right.
inline constexpr std::size_t kMostDamagedLines = 2;

/// The form of a line as a code of that shape has it.
LineForm lineForm(const CodeShape& shape, std::size_t line);

/// The shape that the first line of a code tells, which begins at the first letter with its start
/// mark; nothing if that line does not check.
std::optional<CodeShape> shapeFromFirstLine(const Letters& letters);

enum class Spacing {
    Close,  ///< Between two lines there is less than a line, but for the damaged ones.
    Any,
};

/// Places the lines of a code of that shape, which begins at the first letter. Nothing if more than
/// kMostDamagedLines do not check or are not there. A damaged line tells a wrong number, which is
/// now and then that of a line in front of it; where lines stand close, that is noticed.
/// Cost: linear in the letters.
std::optional<LinePlaces> placeLines(const Letters& letters, const CodeShape& shape,
                                     bool firstLineChecks, Spacing spacing);

/// The stretches of `damaged` that may be its line `line`, of that form, with at most one slip:
/// words that are about as long, also several with gaps between; or, if `bold`, whatever lies where
/// the line should begin or end.
std::vector<LetterRange> stretchesFor(const Letters& letters, const DamagedLines& damaged,
                                      const CodeShape& shape, const LineForm& form, bool bold);

}  // namespace pantile::codec
