#pragma once

// Cells that belong together by their colour, and changes of colour as such. "Colour" is a palette
// index here. See docs/touch-up.md section 3.

#include "core/grid.h"
#include "core/result.h"
#include "picture/cell_set.h"
#include "picture/neighbours.h"

namespace pantile::picture {

/// The cells that can be reached from `at` over cells of its colour alone. It does not run over the
/// grid's edges.
/// Errors: InvalidInput, naming the place, if `at` is outside the grid.
core::Result<CellSet> connectedCells(const core::Grid& grid, core::Point at, Neighbours neighbours);

/// The cells of one colour.
CellSet cellsOfColour(const core::Grid& grid, core::PaletteIndex index);

/// The cells of the colour that stands at `at`, wherever they are. Errors: as connectedCells.
core::Result<CellSet> likeColouredCells(const core::Grid& grid, core::Point at);

/// `grid` with `to` wherever `from` was.
core::Grid replaced(core::Grid grid, core::PaletteIndex from, core::PaletteIndex to);

/// `grid` with the two exchanged.
core::Grid swapped(core::Grid grid, core::PaletteIndex one, core::PaletteIndex other);

}  // namespace pantile::picture
