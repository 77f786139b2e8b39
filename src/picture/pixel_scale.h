#pragma once

// Finds out small art that was enlarged by a whole or nearly whole factor, and takes it back to its
// cells. See docs/conversion.md section 11.

#include <optional>

#include "core/pixels.h"
#include "picture/cell_lines.h"

namespace pantile::picture {

struct EnlargedArt {
    /// One pixel a cell; indexed if the enlarged picture was and no cell was in doubt.
    core::Picture small;
    CellLines lines;

    /// Pixels a cell, along a row.
    double factor() const {
        return static_cast<double>(lines.columns.span.step) /
               static_cast<double>(lines.columns.span.denominator);
    }
};

/// Nothing if the picture is no such art. If every cell is of one colour, that is the small
/// picture's; otherwise, as after a lossy format, each cell gets the colour that the pixels speak
/// for, and colours that only noise tells apart become one.
std::optional<EnlargedArt> findEnlargedArt(const core::Picture& picture);

}  // namespace pantile::picture
