#pragma once

// Cells of few colours that fit a JPEG file's coefficients best. See docs/conversion.md section 11.

#include <array>
#include <vector>

#include "picture/cell_estimate.h"
#include "picture/coefficient_fit.h"

namespace pantile::picture {

/// Shape: a colour for each cell of the equations, which are of equally many in every channel.
/// Starting from a colour for each cell, two become one as long as that costs less than a colour is
/// worth, the cheapest first; cost is what the misfit grows if all other colours give way. Then
/// cells change to whichever of the colours lowers the misfit, until none does. Last, cells and
/// colours change until the coefficients lie within their bounds (bounded_cells.h), unless there
/// are too many of either or the bounds are missed by far.
/// Cost: the third power of the cells.
std::vector<Ycc> solveCells(const std::array<CellEquations, 3>& equations);

}  // namespace pantile::picture
