#pragma once

// The strong lower bounds: what `plan --prove` computes. Authority: docs/drawing.md section 6.2.

#include <cstdint>

#include "core/progress.h"
#include "core/result.h"
#include "drawing/request.h"

namespace pantile::drawing {

/// Times below which plans cannot stay. Units: milliseconds.
struct ProvenBounds {
    std::int64_t everyPlan = 0;  ///< Whatever a plan does.
    /// If each painted colour is picked once and no other: a plan with more picks may be quicker,
    /// so its distance from this one says nothing.
    std::int64_t pickedOnce = 0;
};

/// Never less than lowerBoundMs. They know where the cells of a colour lie, and with at most 17
/// colours also that what is covered must be drawn before. With the pen lines, and where a report
/// goes less than a cell or further with the pen down than up, both are lowerBoundMs.
/// Shape: `request` must pass checkRequest. Cost: seconds to tens of seconds for 64x64 cells in 16
/// colours. Errors: Cancelled.
core::Result<ProvenBounds> provenBounds(const DrawingRequest& request,
                                        const core::Progress& progress = {});

}  // namespace pantile::drawing
