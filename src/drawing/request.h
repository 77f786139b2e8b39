#pragma once

// DrawingRequest: what is to be drawn, on which toolkit, with which timing.

#include <optional>

#include "core/canvas.h"
#include "core/grid.h"
#include "core/result.h"
#include "core/timing.h"

namespace pantile::drawing {

/// Shape: the grid lies in the canvas's top left corner; palette index i is the palette bar's
/// swatch i. Cells at `leaveUnpainted` are never touched; all others are painted, as nothing is
/// known of what the canvas shows.
struct DrawingRequest {
    core::Grid grid;
    std::optional<core::PaletteIndex> leaveUnpainted;
    core::Canvas canvas;
    core::PointerTiming timing;

    bool isPainted(core::Point cell) const { return grid.at(cell) != leaveUnpainted; }
};

/// Errors: DoesNotFit if the grid is larger than the canvas or a painted cell's colour has no
/// swatch; InvalidInput if the timing is out of range, a pitch is, or a swatch lies over the grid.
core::Result<void> checkRequest(const DrawingRequest& request);

}  // namespace pantile::drawing
