#pragma once

// For the operations that make a grid by saying where each of its cells comes from.

#include <vector>

#include "core/grid.h"

namespace pantile::picture {

/// Shape: a grid of `size`, which must be one that a grid may have; cellAt(x, y) is each cell's
/// index.
template <typename CellAt>
core::Grid gridFrom(core::Size size, CellAt cellAt) {
    std::vector<core::PaletteIndex> cells;
    cells.reserve(static_cast<std::size_t>(size.width) * static_cast<std::size_t>(size.height));
    for (int y = 0; y < size.height; ++y) {
        for (int x = 0; x < size.width; ++x) cells.push_back(cellAt(x, y));
    }
    return *core::Grid::create(size.width, size.height, std::move(cells));
}

}  // namespace pantile::picture
