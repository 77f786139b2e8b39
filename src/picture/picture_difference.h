#pragma once

// How far a texture is from the picture it was made of. See docs/conversion.md section 10.

#include "core/grid.h"
#include "core/palette.h"
#include "picture/linear_picture.h"

namespace pantile::picture {

/// What a texture shows; unpainted cells show nothing.
/// Every index must lie inside the palette.
CellColours coloursShown(const core::Grid& grid, const core::Palette& palette);

/// The mean of CIEDE2000 over the cells that are painted in both; 0 if there are none.
/// Both must have the same size. For reports, as core::ciede2000 is.
double meanDifference(const CellColours& wanted, const CellColours& shown);

/// meanDifference of both as an eye at a distance sees them, blurred by blurredByEye.
double meanPerceivedDifference(const CellColours& wanted, const CellColours& shown);

}  // namespace pantile::picture
