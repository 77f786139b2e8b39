#pragma once

// The same cells in another order. See docs/touch-up.md section 5.

#include "core/grid.h"

namespace pantile::picture {

enum class Mirror {
    LeftRight,  ///< Left becomes right.
    TopBottom,
};

enum class Turn { Quarter, Half, ThreeQuarters };

core::Grid mirrored(const core::Grid& grid, Mirror mirror);

/// Clockwise; by quarters the sides change places.
core::Grid turned(const core::Grid& grid, Turn turn);

/// Every cell `by.x` to the right and `by.y` down; what leaves at one edge comes in at the other.
core::Grid shifted(const core::Grid& grid, core::Point by);

}  // namespace pantile::picture
