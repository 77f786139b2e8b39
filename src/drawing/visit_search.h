#pragma once

// Colours that are picked more than once: which cells wait for a later visit. Authority:
// docs/drawing.md section 5.1.

#include <cstdint>
#include <vector>

#include "core/progress.h"
#include "core/result.h"
#include "drawing/parts.h"
#include "drawing/pen_ways.h"
#include "drawing/timing.h"

namespace pantile::drawing {

struct Visits {
    Parts parts;
    std::vector<Part> order;
};

/// Whether coming back may be worth a pick: where a lift takes as long as many steps, and passing
/// under what is drawn later spares lifts.
bool mayComeBack(const DrawingRequest& request, const PenWays& ways);

/// Cuts colours into parts, joins parts and moves them in the order, and keeps what makes the sum
/// of the least trees and the picks less. Begins with whole colours in `order`. Cost: until
/// `mostWork` cells were visited. Errors: Cancelled.
core::Result<Visits> seekVisits(const DrawingRequest& request, const TimeModel& model,
                                const PenWays& ways, std::vector<Part> order, std::int64_t mostWork,
                                std::uint64_t seed, const core::Progress& progress);

}  // namespace pantile::drawing
