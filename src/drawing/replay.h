#pragma once

// Replay: a toolkit played by arithmetic of its own. It sees pointer reports and nothing else, and
// is the judge of every plan and load. Authority: docs/drawing.md section 7.

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "core/canvas.h"
#include "core/result.h"
#include "core/timing.h"
#include "drawing/reports.h"
#include "drawing/request.h"
#include "drawing/stroke.h"

namespace pantile::drawing {

/// What the canvas shows once the reports are through.
/// Shape: canvas.size.width x canvas.size.height cells row by row; none where nothing was painted.
struct Replayed {
    std::vector<std::optional<core::PaletteIndex>> cells;
    std::int64_t milliseconds = 0;
    int picks = 0;
    int lifts = 0;
    int fills = 0;
    bool operator==(const Replayed&) const = default;
};

/// Carries out `reports` under the canvas's pen rules, with the pen starting at cell (0, 0).
/// Errors: InvalidInput naming the report's number (from 0) if it moves too far or too soon, moves
/// and changes the button at once, paints off the grid or before a colour was picked, drags in a
/// way the pen model does not know or the rules forbid, clicks beside swatches and fill button, or
/// if the button stays down at the end.
core::Result<Replayed> replay(std::span<const Report> reports, const core::Canvas& canvas,
                              const core::PointerTiming& timing);

/// Replays the plan's own reports and compares every cell of the canvas, the time and the counts
/// with what the plan and the request say.
/// Errors: as checkRequest and replay; Internal naming the first cell or figure that differs.
core::Result<void> provePlan(const Plan& plan, const DrawingRequest& request);

}  // namespace pantile::drawing
