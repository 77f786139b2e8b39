#pragma once

// The visits of a plan, and each of them once more as runs along rows: slower, but said in fewer
// bytes. Authority: docs/drawing.md section 5.4.

#include <cstdint>
#include <span>
#include <vector>

#include "core/geometry.h"
#include "drawing/stroke.h"
#include "drawing/timing.h"

namespace pantile::drawing {

/// The strokes between two picks. Shape: at least one, all of one colour.
using VisitStrokes = std::vector<Stroke>;

std::vector<VisitStrokes> visitsOf(std::span<const Stroke> strokes);

/// For each visit, strokes that leave the same cells behind: runs from left to right and from top
/// to bottom, of the cells that no later visit paints, each going on over cells of later visits
/// where that takes no longer than a lift. Empty for a visit that is painted over everywhere.
/// Shape: strokes lie on the grid and go straight from point to point. `covers`: whether the pen
/// may paint over other colours.
std::vector<VisitStrokes> asRowRuns(std::span<const VisitStrokes> visits, core::Size grid,
                                    const TimeModel& model, bool covers);

/// From the first press of a visit to its last release.
std::int64_t visitMs(const VisitStrokes& visit, const TimeModel& model);

}  // namespace pantile::drawing
