#pragma once

// Components: cells of one colour that hang together.

#include <cstddef>
#include <span>
#include <vector>

#include "core/grid.h"
#include "picture/neighbours.h"

namespace pantile::picture {

/// Calls visit(neighbour) for the cells beside `cell` that lie on the grid; edges do not wrap.
/// Shape: cells as offsets in reading order.
template <typename Visit>
void visitCellsBeside(core::Size size, int cell, Neighbours neighbours, Visit visit) {
    const int x = cell % size.width;
    const int y = cell / size.width;
    for (int dy = -1; dy <= 1; ++dy) {
        for (int dx = -1; dx <= 1; ++dx) {
            const bool corner = dx != 0 && dy != 0;
            if ((dx == 0 && dy == 0) || (corner && neighbours == Neighbours::Four)) continue;
            const bool onGrid =
                x + dx >= 0 && x + dx < size.width && y + dy >= 0 && y + dy < size.height;
            if (onGrid) visit(cell + dy * size.width + dx);
        }
    }
}

/// All components of a grid, numbered in the order of their first cells in reading order.
class Components {
public:
    Components(const core::Grid& grid, Neighbours neighbours);

    int count() const { return static_cast<int>(m_starts.size()) - 1; }

    /// Offsets in reading order of the component's cells, its first cell first.
    std::span<const int> cellsOf(int component) const;

    int sizeOf(int component) const { return static_cast<int>(cellsOf(component).size()); }

    /// The component of the cell at this offset.
    int at(int cell) const { return m_labels[static_cast<std::size_t>(cell)]; }

private:
    std::vector<int> m_labels;
    std::vector<int> m_cells;   // all cells, component by component
    std::vector<int> m_starts;  // where each component begins among them, and their end
};

}  // namespace pantile::picture
