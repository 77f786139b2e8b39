#pragma once

// Layer: what is drawn between two picks.

#include <cstdint>
#include <vector>

#include "core/grid.h"
#include "drawing/straight_runs.h"

namespace pantile::drawing {

/// Shape: the runs hold every cell that is to be painted; their inner cells lie on the way from end
/// to end. `passable` has an entry for each cell of the grid, row by row, 1 where the pen may go:
/// cells of the layer and those that are painted later.
struct Layer {
    core::PaletteIndex colour = 0;
    Runs runs;
    std::vector<std::uint8_t> passable;
};

}  // namespace pantile::drawing
