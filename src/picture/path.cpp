#include "picture/path.h"

#include <cassert>
#include <cstdlib>
#include <string>
#include <utility>

#include "core/range_check.h"

namespace pantile::picture {
namespace {

int signOf(int number) {
    return (number > 0 ? 1 : 0) - (number < 0 ? 1 : 0);
}

}  // namespace

core::Result<void> checkPlace(core::Point place) {
    const std::string name =
        " of the place " + std::to_string(place.x) + "," + std::to_string(place.y);
    PANTILE_RETURN_IF_ERROR(
        core::checkRange("the column" + name, place.x, -kMaxCoordinate, kMaxCoordinate));
    return core::checkRange("the row" + name, place.y, -kMaxCoordinate, kMaxCoordinate);
}

Path linePath(core::Point from, core::Point to) {
    assert(checkPlace(from) && checkPlace(to));
    int longSide = std::abs(to.x - from.x);
    int shortSide = std::abs(to.y - from.y);
    core::Point along{signOf(to.x - from.x), 0};
    core::Point across{0, signOf(to.y - from.y)};
    if (shortSide > longSide) {
        std::swap(longSide, shortSide);
        std::swap(along, across);
    }
    Path path{from};
    path.reserve(static_cast<std::size_t>(longSide) + 1);
    int decision = 2 * shortSide - longSide;
    for (int step = 0; step < longSide; ++step) {
        core::Point next{path.back().x + along.x, path.back().y + along.y};
        if (decision >= 0) {
            next = {next.x + across.x, next.y + across.y};
            decision -= 2 * longSide;
        }
        decision += 2 * shortSide;
        path.push_back(next);
    }
    return path;
}

Path polylinePath(std::span<const core::Point> corners) {
    Path path(corners.begin(), corners.begin() + (corners.empty() ? 0 : 1));
    for (const core::Point corner : corners) {
        const Path stretch = linePath(path.back(), corner);
        path.insert(path.end(), stretch.begin() + 1, stretch.end());
    }
    return path;
}

}  // namespace pantile::picture
