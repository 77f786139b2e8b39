#pragma once

// Grids of another size: cut, added to, or by whole factors. See docs/touch-up.md section 6.

#include "core/grid.h"
#include "core/result.h"
#include "picture/rectangle.h"

namespace pantile::picture {

/// The part of `grid` under `box`. Errors: InvalidInput, naming the sides, if the box is not wholly
/// on the grid.
core::Result<core::Grid> cropped(const core::Grid& grid, const CellBox& box);

/// Units: rows and columns to add at each side.
struct Margins {
    int left = 0;
    int top = 0;
    int right = 0;
    int bottom = 0;
};

/// `grid` with rows and columns of `index` around it. Errors: InvalidInput if a margin is negative
/// or a side would be more than 256 cells.
core::Result<core::Grid> extended(const core::Grid& grid, const Margins& margins,
                                  core::PaletteIndex index);

/// Every cell as factor x factor cells. Errors: InvalidInput if the factor is less than 1 or a side
/// would be more than 256 cells.
core::Result<core::Grid> scaledUp(const core::Grid& grid, int factor);

/// Every block of factor x factor cells as one: the index that most of its cells have; of equals
/// that of the cell that comes first, row by row. Takes back what scaledUp did.
/// Errors: InvalidInput if the factor is less than 1 or a side is no whole multiple of it.
core::Result<core::Grid> scaledDown(const core::Grid& grid, int factor);

}  // namespace pantile::picture
