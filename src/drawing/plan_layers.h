#pragma once

// The quickest plan in layers: colours one after the other, or coming back to some.

#include "core/progress.h"
#include "core/result.h"
#include "drawing/effort.h"
#include "drawing/request.h"
#include "drawing/stroke.h"
#include "drawing/timing.h"

namespace pantile::drawing {

/// Strokes that turn and pass under later ones, where the request's pen rules say so. Shape:
/// `request` must pass checkRequest; `model` is that of its canvas, from wherever the pen starts.
/// Errors: Cancelled. Source: docs/drawing.md section 5.1.
core::Result<Plan> planLayers(const DrawingRequest& request, const TimeModel& model,
                              const core::Progress& progress, const Effort& effort);

}  // namespace pantile::drawing
