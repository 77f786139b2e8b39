#pragma once

// Which part of a picture goes to which cells. All in whole numbers, so that no rounding decides
// where a cell's edge lies. See docs/conversion.md section 2.

#include <cstdint>

#include "core/geometry.h"

namespace pantile::picture {

enum class Fit {
    Cover,    ///< Fills the target; what sticks out is cut off.
    Contain,  ///< Shows the whole picture; what is left of the target stays unpainted.
    Stretch,  ///< The whole picture onto the whole target.
    Exact,    ///< One pixel is one cell.
};

/// Which part of a picture stays where Fit::Cover cuts, and where Fit::Contain puts it: row by row
/// from the top left.
enum class Anchor {
    TopLeft,
    Top,
    TopRight,
    Left,
    Centre,
    Right,
    BottomLeft,
    Bottom,
    BottomRight,
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

/// All sides must be at least 1. Under Fit::Exact the target is the picture's own size, and under
/// that and Fit::Stretch there is nothing to anchor.
Framing frame(core::Size picture, core::Size target, Fit fit, Anchor anchor = Anchor::Centre);

}  // namespace pantile::picture
