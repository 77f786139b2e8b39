#pragma once

// The same texture with fewer colours. See docs/seams-and-colours.md section 5.

#include "core/palette.h"
#include "core/result.h"
#include "picture/exact_indexed.h"

namespace pantile::picture {

/// Keeps at most `count` of the texture's own colours. As long as there are more, the colour goes
/// whose cells can be given to the nearest colours that stay at the least cost: the rise of the
/// sum, over all cells, of the squared CellDifference to what the cell was; of equals the higher
/// index goes. Entries that no cell has go first, at no cost. The transparent entry stays if a cell
/// is unpainted, and counts. Shape: the entries that stay keep their order; a single colour stands
/// twice. Errors: InvalidInput if the count is outside 2..256 or an index outside the palette.
/// Cost: the square of the number of entries, times the colours that go.
core::Result<Converted> reduceColours(const core::Grid& grid, const core::Palette& palette,
                                      int count);

}  // namespace pantile::picture
