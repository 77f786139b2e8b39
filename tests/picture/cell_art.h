#pragma once

// Cells and grids drawn as text, a row to a string, so that tables worked by hand can be read and a
// failed check shows both pictures.

#include <array>
#include <ostream>
#include <span>
#include <string>
#include <vector>

#include "core/grid.h"
#include "picture/cell_set.h"
#include "picture/textures.h"
#include "support/random.h"

namespace pantile::core {

inline void PrintTo(const Point& point, std::ostream* out) {
    *out << point.x << ',' << point.y;
}

}  // namespace pantile::core

namespace pantile::picture {

using Art = std::vector<std::string>;

/// '#' for the cells of the set, '.' for the others.
inline Art artOf(const CellSet& cells) {
    const auto [width, height] = cells.size();
    Art rows(static_cast<std::size_t>(height), std::string(static_cast<std::size_t>(width), '.'));
    for (const core::Point cell : cells.cells())
        rows[static_cast<std::size_t>(cell.y)][static_cast<std::size_t>(cell.x)] = '#';
    return rows;
}

inline CellSet cellsOn(core::Size size, std::span<const core::Point> points) {
    CellSet cells(size);
    for (const core::Point point : points) cells.add(point);
    return cells;
}

inline Art artOf(core::Size size, std::span<const core::Point> points) {
    return artOf(cellsOn(size, points));
}

/// The digits that gridOf() reads.
inline Art artOf(const core::Grid& grid) {
    Art rows;
    for (int y = 0; y < grid.height(); ++y) {
        rows.emplace_back();
        for (int x = 0; x < grid.width(); ++x)
            rows.back() += static_cast<char>('0' + grid.at(x, y));
    }
    return rows;
}

inline core::Size randomSize(tests::Random& random, int most) {
    return {random.between(1, most), random.between(1, most)};
}

inline core::Point randomPoint(tests::Random& random, int least, int most) {
    const int x = random.between(least, most);
    return {x, random.between(least, most)};
}

/// Three places for a curve, each with both coordinates in least..most.
inline std::array<core::Point, 3> randomCurve(tests::Random& random, int least, int most) {
    const core::Point from = randomPoint(random, least, most);
    const core::Point through = randomPoint(random, least, most);
    return {from, through, randomPoint(random, least, most)};
}

inline bool areNeighbours(core::Point p, core::Point q) {
    const int across = p.x > q.x ? p.x - q.x : q.x - p.x;
    const int down = p.y > q.y ? p.y - q.y : q.y - p.y;
    return p != q && across <= 1 && down <= 1;
}

}  // namespace pantile::picture
