#pragma once

// Searches for the cells that look best from a distance. See docs/conversion.md section 7.3.

#include <vector>

#include "core/palette.h"
#include "core/progress.h"
#include "core/result.h"
#include "picture/linear_picture.h"

namespace pantile::picture {

/// Starts from Floyd and Steinberg's dither and never ends worse by its own measure,
/// optimalDitherLoss. Strength (0..1) weighs the view from a distance against the single cells.
/// Errors: Cancelled.
/// Cost: at most twelve passes of (about 1000 + 15 x colours) operations a cell.
core::Result<std::vector<core::PaletteIndex>> optimalDither(const CellColours& wanted,
                                                            const core::Palette& palette,
                                                            double strength,
                                                            const core::Progress& progress = {});

/// What optimalDither lowers: see SeenDifference.
double optimalDitherLoss(const CellColours& wanted, const core::Palette& palette,
                         const std::vector<core::PaletteIndex>& cells, double strength);

}  // namespace pantile::picture
