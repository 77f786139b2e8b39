#pragma once

// Which part of a picture goes to which cells. All in whole numbers, so that no rounding decides
// where a cell's edge lies. See docs/conversion.md section 2.

#include <cstdint>

#include "core/geometry.h"

namespace pantile::picture {

enum class Fit {
    Cover,    ///< Fills the target; what sticks out is cut off evenly at both sides.
    Contain,  ///< Shows the whole picture; what is left of the target stays unpainted.
    Stretch,  ///< The whole picture onto the whole target.
    Exact,    ///< One pixel is one cell.
};

/// How cells divide one side of a picture: cell i reaches from edge(i) to edge(i + 1).
/// Units: edges are numerators over `denominator`, in pixels.
struct AxisSpan {
    std::int64_t start = 0;
    std::int64_t step = 1;
    std::int64_t denominator = 1;

    bool operator==(const AxisSpan&) const = default;

    std::int64_t edge(int cell) const { return start + cell * step; }
};

/// Shape: cells offset.x .. offset.x + painted.width - 1 of a grid of `target` show the picture,
/// and so on for rows; the others show nothing.
struct Framing {
    AxisSpan columns;
    AxisSpan rows;
    core::Point offset;
    core::Size painted;
    core::Size target;
};

/// All sides must be at least 1. Under Fit::Exact the target is the picture's own size.
Framing frame(core::Size picture, core::Size target, Fit fit);

}  // namespace pantile::picture
