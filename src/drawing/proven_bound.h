#pragma once

// The strong lower bound: what `plan --prove` computes. Authority: docs/drawing.md section 6.2.

#include <cstdint>

#include "core/progress.h"
#include "core/result.h"
#include "drawing/request.h"

namespace pantile::drawing {

/// A time below which no plan of the request can stay, never less than lowerBoundMs. It knows where
/// the cells of a colour lie, and with at most 16 colours also that what is covered must be drawn
/// before. With the pen lines, and where a report goes less than a cell or further with the pen
/// down than up, it is lowerBoundMs. Shape: `request` must pass checkRequest. Cost: seconds to tens
/// of seconds for 64x64 cells in 16 colours. Errors: Cancelled.
core::Result<std::int64_t> provenBoundMs(const DrawingRequest& request,
                                         const core::Progress& progress = {});

}  // namespace pantile::drawing
