#include "picture/fill.h"

#include <string>
#include <utility>
#include <vector>

namespace pantile::picture {
namespace {

using core::Grid;
using core::PaletteIndex;
using core::Point;
using core::Result;

Result<void> checkInside(const Grid& grid, Point at) {
    if (grid.contains(at)) return {};
    return core::Error{core::ErrorKind::InvalidInput,
                       "the place " + std::to_string(at.x) + "," + std::to_string(at.y) +
                           " is outside the texture of " + std::to_string(grid.width()) + "x" +
                           std::to_string(grid.height()) + " cells",
                       "columns are 0 to " + std::to_string(grid.width() - 1) + ", rows 0 to " +
                           std::to_string(grid.height() - 1)};
}

}  // namespace

Result<CellSet> connectedCells(const Grid& grid, Point at, Neighbours neighbours) {
    PANTILE_RETURN_IF_ERROR(checkInside(grid, at));
    const PaletteIndex colour = grid.at(at);
    CellSet cells(grid.size());
    cells.add(at);
    std::vector<Point> toVisit{at};
    while (!toVisit.empty()) {
        const Point cell = toVisit.back();
        toVisit.pop_back();
        for (const Point step : stepsTo(neighbours)) {
            const Point next{cell.x + step.x, cell.y + step.y};
            if (!grid.contains(next) || grid.at(next) != colour || cells.has(next)) continue;
            cells.add(next);
            toVisit.push_back(next);
        }
    }
    return cells;
}

CellSet cellsOfColour(const Grid& grid, PaletteIndex index) {
    CellSet cells(grid.size());
    for (int y = 0; y < grid.height(); ++y) {
        for (int x = 0; x < grid.width(); ++x) {
            if (grid.at(x, y) == index) cells.add({x, y});
        }
    }
    return cells;
}

Result<CellSet> likeColouredCells(const Grid& grid, Point at) {
    PANTILE_RETURN_IF_ERROR(checkInside(grid, at));
    return cellsOfColour(grid, grid.at(at));
}

Grid replaced(Grid grid, PaletteIndex from, PaletteIndex to) {
    const CellSet cells = cellsOfColour(grid, from);
    return painted(std::move(grid), cells, to);
}

Grid swapped(Grid grid, PaletteIndex one, PaletteIndex other) {
    const CellSet ones = cellsOfColour(grid, one);
    return painted(replaced(std::move(grid), other, one), ones, other);
}

}  // namespace pantile::picture
