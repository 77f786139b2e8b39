#include "core/grid.h"

#include <algorithm>

namespace pantile::core {

Result<void> checkGridSize(int width, int height) {
    const auto fits = [](int side) { return side >= 1 && side <= kMaxGridSide; };
    if (fits(width) && fits(height)) return {};
    return Error{ErrorKind::InvalidInput,
                 "a grid of " + std::to_string(width) + "x" + std::to_string(height) +
                     " cells is outside 1x1 to 256x256",
                 "choose a width and a height from 1 to 256 cells"};
}

Result<Grid> Grid::create(int width, int height, std::vector<PaletteIndex> cells) {
    PANTILE_RETURN_IF_ERROR(checkGridSize(width, height));
    const auto wanted = static_cast<std::size_t>(width) * static_cast<std::size_t>(height);
    if (cells.size() != wanted) {
        return Error{ErrorKind::InvalidInput,
                     "a grid of " + std::to_string(width) + "x" + std::to_string(height) +
                         " needs " + std::to_string(wanted) + " cells, not " +
                         std::to_string(cells.size()),
                     "give one palette index for each cell"};
    }
    return Grid(width, height, std::move(cells));
}

Result<Grid> Grid::filled(int width, int height, PaletteIndex index) {
    PANTILE_RETURN_IF_ERROR(checkGridSize(width, height));
    const auto count = static_cast<std::size_t>(width) * static_cast<std::size_t>(height);
    return Grid(width, height, std::vector<PaletteIndex>(count, index));
}

PaletteIndex Grid::largestIndex() const {
    return *std::max_element(m_cells.begin(), m_cells.end());
}

}  // namespace pantile::core
