#include "picture/brush.h"

#include <cassert>
#include <vector>

#include "core/range_check.h"
#include "picture/ellipse.h"
#include "picture/rectangle.h"

namespace pantile::picture {
namespace {

// Whole brushes further away than this cannot reach a grid, which saves the work on long paths.
bool canReach(core::Size grid, core::Point place, int size) {
    return place.x > -size && place.y > -size && place.x < grid.width + size &&
           place.y < grid.height + size;
}

// What the brush paints, from the cell that it is put down on.
std::vector<core::Point> offsets(const Brush& brush) {
    const core::Size size{brush.size, brush.size};
    const CellBox box{0, 0, brush.size - 1, brush.size - 1};
    const CellSet cells =
        brush.shape == BrushShape::Round ? filledEllipse(size, box) : filledRectangle(size, box);
    const int middle = (brush.size - 1) / 2;
    std::vector<core::Point> offsets;
    for (const core::Point cell : cells.cells())
        offsets.push_back({cell.x - middle, cell.y - middle});
    return offsets;
}

}  // namespace

core::Result<void> checkBrush(const Brush& brush) {
    return core::checkRange("the brush's size", brush.size, 1, kMaxBrushSize);
}

CellSet stamped(core::Size grid, std::span<const core::Point> path, const Brush& brush) {
    assert(checkBrush(brush));
    const std::vector<core::Point> reach = offsets(brush);
    CellSet cells(grid);
    for (const core::Point place : path) {
        if (!canReach(grid, place, brush.size)) continue;
        for (const core::Point offset : reach) cells.add({place.x + offset.x, place.y + offset.y});
    }
    return cells;
}

}  // namespace pantile::picture
