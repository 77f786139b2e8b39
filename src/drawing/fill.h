#pragma once

// Filling: a toolkit's button that paints the whole canvas at once. Authority: docs/drawing.md
// section 5.3.

#include <vector>

#include "core/grid.h"
#include "drawing/request.h"

namespace pantile::drawing {

/// Whether a plan may use the fill button: the canvas has one, the texture paints every cell of it,
/// and the other colours may cover what was filled.
bool canFill(const DrawingRequest& request);

/// The colours worth filling with, the one with most cells first; none unless canFill.
std::vector<core::PaletteIndex> fillCandidates(const DrawingRequest& request);

}  // namespace pantile::drawing
