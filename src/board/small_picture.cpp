#include "board/small_picture.h"

#include <algorithm>
#include <array>
#include <cassert>

namespace pantile::board {
namespace {

core::Size sizeOn(core::Size grid, core::Size screen) {
    if (grid.width <= screen.width && grid.height <= screen.height) return grid;
    if (grid.width * screen.height >= grid.height * screen.width) {
        return {screen.width, std::max(1, grid.height * screen.width / grid.width)};
    }
    return {std::max(1, grid.width * screen.height / grid.height), screen.height};
}

/// The commonest index of the cells from `start` up to `end`, which is not one of them.
core::PaletteIndex commonest(const core::Grid& grid, core::Point start, core::Point end) {
    std::array<int, 256> counts{};
    for (int y = start.y; y < end.y; ++y) {
        for (int x = start.x; x < end.x; ++x) ++counts[grid.at(x, y)];
    }
    return static_cast<core::PaletteIndex>(std::max_element(counts.begin(), counts.end()) -
                                           counts.begin());
}

}  // namespace

core::Grid smallPicture(const core::Grid& grid, core::Size screen) {
    assert(screen.width >= 1 && screen.height >= 1);
    const core::Size size = sizeOn(grid.size(), screen);
    core::Grid picture = *core::Grid::filled(size.width, size.height, 0);
    for (int y = 0; y < size.height; ++y) {
        for (int x = 0; x < size.width; ++x) {
            const core::Point start = {x * grid.width() / size.width,
                                       y * grid.height() / size.height};
            const core::Point end = {(x + 1) * grid.width() / size.width,
                                     (y + 1) * grid.height() / size.height};
            picture.set(x, y, commonest(grid, start, end));
        }
    }
    return picture;
}

}  // namespace pantile::board
