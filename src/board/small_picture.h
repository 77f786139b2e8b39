#pragma once

// Small pictures: what the screen of a board shows of a slot.

#include "core/geometry.h"
#include "core/grid.h"

namespace pantile::board {

/// `grid` in as many cells as `screen` holds, its proportions kept; the grid itself if that fits.
/// Each cell shows the index that most of the cells below it have; of equals the lowest.
/// Shape: both sides of `screen` are at least 1; the picture's are at least 1 and at most those.
core::Grid smallPicture(const core::Grid& grid, core::Size screen);

}  // namespace pantile::board
