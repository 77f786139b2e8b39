#pragma once

// Paint order: which cell gets its colour when, to show a drawing as it comes about.

#include <cstdint>
#include <vector>

#include "core/canvas.h"
#include "core/timing.h"
#include "drawing/stroke.h"

namespace pantile::drawing {

struct PaintedCell {
    core::Point cell;
    core::PaletteIndex colour = 0;
    std::int64_t milliseconds = 0;  ///< From the pen's start.
    bool operator==(const PaintedCell&) const = default;
};

/// Shape: in the order of time; a cell that is painted over stands there again, and after a fill
/// all cells of the canvas.
std::vector<PaintedCell> paintOrder(const Plan& plan, const core::Canvas& canvas,
                                    const core::PointerTiming& timing);

}  // namespace pantile::drawing
