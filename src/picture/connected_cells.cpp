#include "picture/connected_cells.h"

namespace pantile::picture {
namespace {

constexpr int kNoComponent = -1;

}  // namespace

Components::Components(const core::Grid& grid, Neighbours neighbours)
    : m_labels(grid.cellCount(), kNoComponent) {
    const auto cells = grid.cells();
    m_cells.reserve(cells.size());
    for (int first = 0; first < static_cast<int>(cells.size()); ++first) {
        if (at(first) != kNoComponent) continue;
        const int label = static_cast<int>(m_starts.size());
        m_starts.push_back(static_cast<int>(m_cells.size()));
        const core::PaletteIndex colour = cells[static_cast<std::size_t>(first)];
        const auto take = [&](int cell) {
            const auto offset = static_cast<std::size_t>(cell);
            if (m_labels[offset] != kNoComponent || cells[offset] != colour) return;
            m_labels[offset] = label;
            m_cells.push_back(cell);
        };
        take(first);
        for (auto next = static_cast<std::size_t>(m_starts.back()); next < m_cells.size(); ++next)
            visitCellsBeside(grid.size(), m_cells[next], neighbours, take);
    }
    m_starts.push_back(static_cast<int>(m_cells.size()));
}

std::span<const int> Components::cellsOf(int component) const {
    const auto number = static_cast<std::size_t>(component);
    const auto begin = static_cast<std::size_t>(m_starts[number]);
    const auto end = static_cast<std::size_t>(m_starts[number + 1]);
    return std::span<const int>(m_cells).subspan(begin, end - begin);
}

}  // namespace pantile::picture
