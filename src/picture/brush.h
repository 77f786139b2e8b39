#pragma once

// Brushes: what a shape leaves behind where its path goes. See docs/touch-up.md section 1.

#include <span>

#include "core/result.h"
#include "picture/cell_set.h"

namespace pantile::picture {

enum class BrushShape {
    Square,
    Round,  ///< The filled circle of that many cells across; at sizes 1 and 2 a square.
};

inline constexpr int kMaxBrushSize = 16;

/// Shape: `size` cells across and down, 1..16; an even one reaches one cell further right and down
/// than left and up.
struct Brush {
    int size = 1;
    BrushShape shape = BrushShape::Square;

    bool operator==(const Brush&) const = default;
};

/// Errors: InvalidInput if the size is outside 1..16.
core::Result<void> checkBrush(const Brush& brush);

/// The cells of a grid that the brush, which must pass checkBrush, paints when it is put down on
/// every cell of `path`; the path may run outside the grid.
CellSet stamped(core::Size grid, std::span<const core::Point> path, const Brush& brush);

}  // namespace pantile::picture
