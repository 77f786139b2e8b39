#pragma once

// Where the cells of enlarged art lie, from the steps between its pixels alone. See
// docs/conversion.md section 11.

#include <optional>

#include "core/pixels.h"
#include "picture/framing.h"

namespace pantile::picture {

/// One side of a picture, divided into cells of equal pitch. A pixel belongs to the cell in which
/// its centre lies; those before the first cell and after the last belong to none.
struct CellSide {
    AxisSpan span;
    int cells = 0;

    bool operator==(const CellSide&) const = default;

    /// The first pixel of `cell`, within 0..pixels.
    int firstPixel(int cell, int pixels) const;

    /// The pixel in which the middle of `cell` lies.
    int centrePixel(int cell, int pixels) const;
};

/// How a picture falls into cells.
struct CellLines {
    CellSide columns;
    CellSide rows;
    bool exact = false;  ///< No cell has pixels of more than one colour.
};

/// Nothing if the picture does not show that it is enlarged: too few lines, or steps everywhere.
/// Shape: pitches of two pixels or more, at most 256 cells a side. A cell that the border cuts
/// counts if half of it is there.
/// Cost: linear in the pixels, and in pixels a side times the cells looked for.
std::optional<CellLines> findCellLines(const core::Pixels& pixels);

}  // namespace pantile::picture
