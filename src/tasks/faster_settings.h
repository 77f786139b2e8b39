#pragma once

// What faster settings would save: the same texture planned with other timings and pens.

#include <cstdint>
#include <string>
#include <vector>

#include "core/progress.h"
#include "core/result.h"
#include "drawing/request.h"

namespace pantile::tasks {

struct FasterSetting {
    std::string setting;  ///< In words: "reports every 1 ms".
    std::string how;      ///< What sets it: "board set flash-32k --report-ms 1".
    std::int64_t milliseconds = 0;
    std::int64_t savesMs = 0;
};

/// Plans `request` with quick timing, reports of 1 ms, shorter presses and releases, each other pen
/// model, and without the pen rules that forbid something; those that are quicker than `plannedMs`,
/// the quickest first. Cost: as many plans, each with the usual effort. Errors: Cancelled; as
/// drawing::planDrawing.
core::Result<std::vector<FasterSetting>> fasterSettings(const drawing::DrawingRequest& request,
                                                        const std::string& board,
                                                        std::int64_t plannedMs,
                                                        const core::Progress& progress = {});

}  // namespace pantile::tasks
