#include "picture/outline.h"

#include <algorithm>

namespace pantile::picture {

CellSet outlineOn(const core::Grid& grid, core::PaletteIndex background, Neighbours neighbours) {
    CellSet cells(grid.size());
    const auto steps = stepsTo(neighbours);
    for (int y = 0; y < grid.height(); ++y) {
        for (int x = 0; x < grid.width(); ++x) {
            if (grid.at(x, y) != background) continue;
            const bool beside = std::any_of(steps.begin(), steps.end(), [&](core::Point step) {
                const core::Point next{x + step.x, y + step.y};
                return grid.contains(next) && grid.at(next) != background;
            });
            if (beside) cells.add({x, y});
        }
    }
    return cells;
}

}  // namespace pantile::picture
