#include "picture/cell_set.h"

#include <cassert>

namespace pantile::picture {

std::vector<core::Point> CellSet::cells() const {
    std::vector<core::Point> cells;
    for (int y = 0; y < m_size.height; ++y) {
        for (int x = 0; x < m_size.width; ++x) {
            if (has({x, y})) cells.push_back({x, y});
        }
    }
    return cells;
}

core::Grid painted(core::Grid grid, const CellSet& where, core::PaletteIndex index,
                   std::optional<core::PaletteIndex> only) {
    assert(where.size() == grid.size());
    for (const core::Point cell : where.cells()) {
        if (!only || grid.at(cell) == *only) grid.set(cell.x, cell.y, index);
    }
    return grid;
}

}  // namespace pantile::picture
