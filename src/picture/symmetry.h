#pragma once

// Live symmetry: whatever is painted in one part of the grid is painted in the others as well. See
// docs/touch-up.md section 1.

#include "core/result.h"
#include "picture/cell_set.h"

namespace pantile::picture {

enum class Symmetry {
    None,
    LeftRight,  ///< 2-fold.
    TopBottom,  ///< 2-fold.
    Four,       ///< Both of these.
    Eight,      ///< And mirrored over both diagonals: square grids only.
};

/// The cells with all their mirror images about the middle of the grid.
/// Errors: InvalidInput for Eight on a grid that is not square.
core::Result<CellSet> repeated(const CellSet& cells, Symmetry symmetry);

}  // namespace pantile::picture
