#pragma once

// The facade of this folder: from a grid to the strokes that draw it. Authority: docs/drawing.md
// sections 4 and 5.

#include "core/progress.h"
#include "core/result.h"
#include "drawing/effort.h"
#include "drawing/request.h"
#include "drawing/stroke.h"

namespace pantile::drawing {

/// The strokes that paint the request's grid: no cell left out, unpainted cells untouched, never
/// slower than planRowByRow, and within the request's pen rules. The same request and effort give
/// the same plan everywhere. Errors: as checkRequest; Cancelled when `progress` asks to stop.
core::Result<Plan> planDrawing(const DrawingRequest& request, const core::Progress& progress = {},
                               const Effort& effort = {});

/// Straight strokes only, each cell painted once: what planDrawing falls back to where nothing else
/// is quicker. Errors: as planDrawing.
core::Result<Plan> planStraight(const DrawingRequest& request, const core::Progress& progress = {});

/// The plain way that plans are compared with: colour by colour in palette order, row by row, each
/// run of equal cells one stroke, every other row that has such runs backwards.
/// Shape: `request` must pass checkRequest.
Plan planRowByRow(const DrawingRequest& request);

/// A time below which no plan of the request can stay under the time model, whatever its strokes.
/// Shape: `request` must pass checkRequest.
/// Source: proof in docs/drawing.md section 6.
std::int64_t lowerBoundMs(const DrawingRequest& request);

}  // namespace pantile::drawing
