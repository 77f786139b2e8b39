#pragma once

// PathBound: no path through all cells of a colour is shorter. Authority: docs/drawing.md section
// 6.2.

#include <cstdint>
#include <optional>
#include <vector>

#include "core/geometry.h"
#include "drawing/pen_ways.h"

namespace pantile::drawing {

/// What a path through a colour's cells is made of. Units: milliseconds.
/// Shape: `passable` has an entry for each cell of the grid; `fromSwatch` and `toNext` have one for
/// each of `cells`.
struct PathTask {
    std::vector<core::Point> cells;
    std::vector<std::uint8_t> passable;
    std::vector<std::int64_t> fromSwatch;
    std::vector<std::int64_t> toNext;
    std::int64_t cutMs = 0;  ///< Instead of a link: out to a swatch, a pick, and in again.
};

/// What paths do not stay under. Units: milliseconds.
struct PathBounds {
    std::int64_t whole = 0;
    std::optional<std::int64_t>
        cut;  ///< If at least one link is a cut; none where that is unknown.
};

/// Of every path that begins with a `fromSwatch`, visits all cells by links of section 5.1 without
/// limits of their length, and ends with a `toNext`: a time that it does not stay under.
/// Cost: rounds x cells squared.
/// Source: M. Held, R. Karp, 'The traveling-salesman problem and minimum spanning trees: part II',
/// Mathematical Programming 1, 1971, for paths and in whole numbers.
/// `prices` are those to begin with, one for each cell, or none; they become the best ones found,
/// which serve well for the same cells with other passable ones.
PathBounds pathBounds(const PathTask& task, const PenWays& ways, int rounds,
                      std::vector<std::int64_t>& prices);

}  // namespace pantile::drawing
