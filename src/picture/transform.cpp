#include "picture/transform.h"

#include "picture/grid_from.h"

namespace pantile::picture {
namespace {

// The remainder that is never negative.
int wrapped(int place, int side) {
    const int remainder = place % side;
    return remainder < 0 ? remainder + side : remainder;
}

core::Grid quarterTurned(const core::Grid& grid) {
    const int bottom = grid.height() - 1;
    return gridFrom({grid.height(), grid.width()},
                    [&](int x, int y) { return grid.at(y, bottom - x); });
}

}  // namespace

core::Grid mirrored(const core::Grid& grid, Mirror mirror) {
    const int right = grid.width() - 1;
    const int bottom = grid.height() - 1;
    return gridFrom(grid.size(), [&](int x, int y) {
        return mirror == Mirror::LeftRight ? grid.at(right - x, y) : grid.at(x, bottom - y);
    });
}

core::Grid turned(const core::Grid& grid, Turn turn) {
    core::Grid quarter = quarterTurned(grid);
    if (turn == Turn::Quarter) return quarter;
    core::Grid half = quarterTurned(quarter);
    return turn == Turn::Half ? half : quarterTurned(half);
}

core::Grid shifted(const core::Grid& grid, core::Point by) {
    const core::Point first{wrapped(by.x, grid.width()), wrapped(by.y, grid.height())};
    return gridFrom(grid.size(), [&](int x, int y) {
        return grid.at(wrapped(x - first.x, grid.width()), wrapped(y - first.y, grid.height()));
    });
}

}  // namespace pantile::picture
