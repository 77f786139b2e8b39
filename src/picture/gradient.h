#pragma once

// Gradients between colours of the palette, by an ordered dither: no colour comes in that is not in
// the list. See docs/touch-up.md section 4.

#include <vector>

#include "core/grid.h"
#include "core/result.h"
#include "picture/cell_set.h"

namespace pantile::picture {

/// Shape: the first colour at `from` and before it, the last at `to` and beyond, the others evenly
/// between; the same along every line square to that direction.
struct Gradient {
    core::Point from;
    core::Point to;
    std::vector<core::PaletteIndex> colours;  ///< 2..256; one may stand more than once.
};

/// `grid` with the cells of `where`, which is of its size, taken from the gradient. Between two
/// neighbours of the list the threshold of a cell's place in the 8x8 matrix decides, counted from
/// the grid's first cell, so that gradients on grids of whole multiples of 8 meet without a seam.
/// Errors: InvalidInput if `from` is `to` or either fails checkPlace, or for fewer than 2 or more
/// than 256 colours.
/// Source: B. E. Bayer, 'An optimum method for two-level rendition of continuous-tone pictures',
/// IEEE Int. Conf. on Communications, 1973.
core::Result<core::Grid> withGradient(core::Grid grid, const CellSet& where,
                                      const Gradient& gradient);

}  // namespace pantile::picture
