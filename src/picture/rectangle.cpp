#include "picture/rectangle.h"

#include <algorithm>
#include <array>

namespace pantile::picture {

CellBox boxBetween(core::Point corner, core::Point opposite) {
    return {std::min(corner.x, opposite.x), std::min(corner.y, opposite.y),
            std::max(corner.x, opposite.x), std::max(corner.y, opposite.y)};
}

CellBox clipped(const CellBox& box, core::Size grid) {
    return {std::max(box.left, 0), std::max(box.top, 0), std::min(box.right, grid.width - 1),
            std::min(box.bottom, grid.height - 1)};
}

Path rectanglePath(const CellBox& box) {
    const core::Point start{box.left, box.top};
    const core::Point end{box.right, box.bottom};
    if (box.width() == 1 || box.height() == 1) return linePath(start, end);
    const std::array<core::Point, 5> corners = {
        {start, {box.right, box.top}, end, {box.left, box.bottom}, start}};
    Path path = polylinePath(corners);
    path.pop_back();
    return path;
}

CellSet filledRectangle(core::Size grid, const CellBox& box) {
    CellSet cells(grid);
    const CellBox part = clipped(box, grid);
    for (int y = part.top; y <= part.bottom; ++y) {
        for (int x = part.left; x <= part.right; ++x) cells.add({x, y});
    }
    return cells;
}

}  // namespace pantile::picture
