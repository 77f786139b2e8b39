#pragma once

// Between two steps of planning: how far it is, and whether it is to stop.

#include <cstdint>
#include <string_view>

#include "core/progress.h"
#include "core/result.h"

namespace pantile::drawing {

/// Errors: Cancelled.
inline core::Result<void> goOn(const core::Progress& progress, std::int64_t done,
                               std::int64_t total, std::string_view what = "planning strokes") {
    if (progress.stopRequested()) {
        return core::Error{core::ErrorKind::Cancelled, "planning the drawing was stopped", ""};
    }
    progress.tell(done, total, what);
    return {};
}

}  // namespace pantile::drawing
