#pragma once

// The minimum-error boundary cut: where to change from one picture to another that overlaps it, so
// that the change is seen least.
// Source: A. A. Efros, W. T. Freeman, 'Image Quilting for Texture Synthesis and Transfer', SIGGRAPH
// 2001, section 2.1. Closing the path is ours: textures repeat.

#include <cstdint>
#include <limits>
#include <optional>
#include <span>
#include <vector>

#include "core/geometry.h"

namespace pantile::picture {

struct BoundaryCut {
    std::vector<int> columns;  ///< One for each row.
    std::int64_t error = 0;    ///< The sum of what the path runs over.
};

/// The path from the top row to the bottom row that runs over the least sum of `errors`, moves by
/// at most one column from a row to the next, and ends at most one column from where it began. Of
/// several such paths, the one that comes first when they are sorted by their columns from the top.
/// Nothing if all run over a sum of `below` or more.
/// Shape: overlap.height rows of overlap.width errors; both at least 1. Units: errors 0 to 2^40.
/// Cost: at most overlap.width^2 x overlap.height.
std::optional<BoundaryCut> closedBoundaryCut(
    std::span<const std::int64_t> errors, core::Size overlap,
    std::int64_t below = std::numeric_limits<std::int64_t>::max());

}  // namespace pantile::picture
