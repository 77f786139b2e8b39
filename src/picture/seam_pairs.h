#pragma once

// Cells that lie side by side when a texture is repeated: inside it and across a seam.

#include "core/grid.h"

namespace pantile::picture {

enum class Seam {
    Vertical,    ///< Where the right edge meets the left edge of the next copy.
    Horizontal,  ///< Where the bottom edge meets the top edge of the next copy.
};

/// How many pairs of cells meet at the seam.
inline int seamLength(const core::Grid& grid, Seam seam) {
    return seam == Seam::Vertical ? grid.height() : grid.width();
}

/// Calls across(place, p, q) for the cells that meet at the seam and inside(p, q) for all others
/// that lie side by side in the same direction. A place is the row of a vertical seam, the column
/// of a horizontal one.
template <typename Across, typename Inside>
void visitNeighbours(const core::Grid& grid, Seam seam, Across across, Inside inside) {
    const bool vertical = seam == Seam::Vertical;
    const int steps = vertical ? grid.width() : grid.height();
    const auto at = [&grid, vertical](int place, int step) {
        return vertical ? grid.at(step, place) : grid.at(place, step);
    };
    for (int place = 0; place < seamLength(grid, seam); ++place) {
        for (int step = 0; step + 1 < steps; ++step) inside(at(place, step), at(place, step + 1));
        across(place, at(place, steps - 1), at(place, 0));
    }
}

}  // namespace pantile::picture
