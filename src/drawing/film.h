#pragma once

// Film: a replay with every instant of it, to be shown forwards and backwards.

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "core/canvas.h"
#include "core/geometry.h"
#include "core/grid.h"
#include "core/result.h"
#include "core/timing.h"
#include "drawing/replay.h"
#include "drawing/reports.h"

namespace pantile::drawing {

/// One cell that shows something else from now on; a cell may get the colour that it has.
struct CellChange {
    std::size_t cell = 0;  ///< Its place among the canvas's cells, row by row.
    std::optional<core::PaletteIndex> before;
    std::optional<core::PaletteIndex> after;
};

/// What is to be seen once a report has landed.
struct Instant {
    std::int64_t milliseconds = 0;  ///< When it lands, from the pen's start.
    core::Point pen;                ///< In counts.
    bool pressed = false;
    std::optional<core::PaletteIndex> colour;  ///< The one picked last.
    std::size_t changes = 0;                   ///< How many of the film's changes are done by then.
};

/// Shape: an instant for each report, in order; the changes of all, in order.
struct Film {
    std::vector<Instant> instants;
    std::vector<CellChange> changes;
    Replayed end;
};

/// As replay, with all that happens on the way. Errors: as replay.
core::Result<Film> filmReplay(std::span<const Report> reports, const core::Canvas& canvas,
                              const core::PointerTiming& timing);

}  // namespace pantile::drawing
