#pragma once

// Straight runs: stretches of one colour along a row or a column, the strokes of a plan without
// turns.

#include <vector>

#include "core/geometry.h"
#include "drawing/request.h"

namespace pantile::drawing {

/// Shape: both ends included, in the direction of drawing; one cell if they are equal.
struct StraightRun {
    core::Point from;
    core::Point to;
    bool operator==(const StraightRun&) const = default;
};

using Runs = std::vector<StraightRun>;

inline StraightRun turned(const StraightRun& run) {
    return {run.to, run.from};
}

/// The longest runs of every painted colour along rows, row by row, each left to right.
/// Shape: 256 lists, by palette index.
std::vector<Runs> rowRuns(const DrawingRequest& request);

/// The same along columns, column by column, each top to bottom.
std::vector<Runs> columnRuns(const DrawingRequest& request);

}  // namespace pantile::drawing
