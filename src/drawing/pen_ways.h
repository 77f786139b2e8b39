#pragma once

// PenWays: what it costs to take the pen from one cell to another on one canvas, whichever colour
// it draws. Authority: docs/drawing.md section 5.

#include <cstdint>
#include <vector>

#include "core/geometry.h"
#include "drawing/request.h"
#include "drawing/timing.h"

namespace pantile::drawing {

/// Units: milliseconds; distances in cells.
struct PenWays {
    core::Size grid;
    std::int64_t stepMs = 0;  ///< From a cell to its neighbour with the pen down.
    int stride = 1;       ///< Cells in one line that one step may pass: more with the pen lines.
    bool aslant = false;  ///< Neighbours are eight, not four.
    int depth = 0;        ///< More steps than this never pay, or are not looked at.
    int reach = 0;        ///< The same for the longer side of a way.
    std::vector<std::int64_t> liftMs;  ///< Lift, travel, press again, by the longer side.

    /// How far the longest way goes that is looked at; links beyond it lift the pen.
    static constexpr int kMostReach = 12;
    static constexpr int kMostDepth = 16;

    PenWays(const DrawingRequest& request, const TimeModel& model);
};

/// The cells next to a cell that the pen can step to, at most eight.
/// Shape: calls `visit(core::Point)` for each that lies on the grid.
template <typename Visit>
void forEachNeighbour(core::Point cell, const PenWays& ways, Visit visit) {
    for (int dy = -1; dy <= 1; ++dy) {
        for (int dx = -1; dx <= 1; ++dx) {
            if (dx == 0 && dy == 0) continue;
            if (dx != 0 && dy != 0 && !ways.aslant) continue;
            const core::Point next{cell.x + dx, cell.y + dy};
            const bool inside =
                next.x >= 0 && next.y >= 0 && next.x < ways.grid.width && next.y < ways.grid.height;
            if (inside) visit(next);
        }
    }
}

/// The cells that one step leads to: neighbours, and what lies beyond them in the same line as far
/// as the stride goes.
/// Shape: `visit(core::Point)` tells whether to go on along the line.
template <typename Visit>
void forEachStep(core::Point cell, const PenWays& ways, Visit visit) {
    forEachNeighbour(cell, ways, [&](core::Point next) {
        const core::Point step{next.x - cell.x, next.y - cell.y};
        for (int i = 1; visit(next) && i < ways.stride; ++i) {
            next = {next.x + step.x, next.y + step.y};
            const bool inside =
                next.x >= 0 && next.y >= 0 && next.x < ways.grid.width && next.y < ways.grid.height;
            if (!inside) return;
        }
    });
}

/// Where a cell stands in a list of all cells of a grid, row by row.
inline std::size_t cellOffset(core::Point cell, core::Size grid) {
    return static_cast<std::size_t>(cell.y) * static_cast<std::size_t>(grid.width) +
           static_cast<std::size_t>(cell.x);
}

inline std::size_t cellCount(core::Size grid) {
    return static_cast<std::size_t>(grid.width) * static_cast<std::size_t>(grid.height);
}

}  // namespace pantile::drawing
