#pragma once

// Paths from cell to cell: what a brush follows. They know no grid; where a brush stamps them onto
// one, they are clipped. See docs/touch-up.md section 2.

#include <span>
#include <vector>

#include "core/geometry.h"
#include "core/result.h"

namespace pantile::picture {

/// How far a place of a shape may lie from the grid's first cell, either way.
inline constexpr int kMaxCoordinate = 4096;

/// Errors: InvalidInput, naming the place, if a coordinate is outside -4096..4096.
core::Result<void> checkPlace(core::Point place);

/// Shape: cells one after the other, each a neighbour of the last by a side or a corner.
using Path = std::vector<core::Point>;

/// The straight line, both ends included; the places must pass checkPlace. Where it runs just
/// between two cells it takes the one further from where it began, seen across its direction.
/// Source: J. E. Bresenham, 'Algorithm for computer control of a digital plotter', IBM Systems
/// Journal 4(1), 1965.
Path linePath(core::Point from, core::Point to);

/// Lines from each of `corners` to the next; a corner stands once. One corner is one cell, none is
/// nothing.
Path polylinePath(std::span<const core::Point> corners);

}  // namespace pantile::picture
