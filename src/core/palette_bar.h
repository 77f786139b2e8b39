#pragma once

// Where a canvas's palette bar lies beside its grid: a click on a swatch that lies over the grid
// would paint.

#include "core/canvas.h"
#include "core/geometry.h"
#include "core/palette.h"
#include "core/result.h"

namespace pantile::core {

/// Where the first swatch usually lies: to the right of `grid`, level with its top.
Point usualBarPlace(const CanvasGeometry& geometry, Size grid);

/// Errors: InvalidInput if the swatch of `colour` lies over the grid.
Result<void> checkSwatch(PaletteIndex colour, const Canvas& canvas);

/// Errors: as checkUnnamedCanvas; InvalidInput naming the first swatch that lies over the grid.
Result<void> checkBar(const Canvas& canvas);

/// Puts the bar at its usual place if it lies over the grid and `before`, for a grid of
/// `sizeBefore`, had it at the usual place too: then nobody has told where it lies.
void keepUsualBarClear(Canvas& canvas, const CanvasGeometry& before, Size sizeBefore);

}  // namespace pantile::core
