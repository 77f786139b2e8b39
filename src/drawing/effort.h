#pragma once

// Effort: how long a planner searches, counted in steps and not by a clock, so that a plan is the
// same on every machine.

#include <cstdint>

namespace pantile::drawing {

struct Effort {
    /// Changes tried for each painted cell, on average; 0 for the first plan alone.
    std::int64_t triesPerCell = 2;
    std::int64_t leastTries = 400;  ///< So that small textures are tried enough; none if 0 a cell.
    std::int64_t mostTries = 40'000;
    std::uint64_t seed = 1;  ///< Of the numbers that choose where to try.
};

}  // namespace pantile::drawing
