#pragma once

// Effort: how long a planner searches, counted in steps and not by a clock, so that a plan is the
// same on every machine.

#include <cstdint>

#include "drawing/request.h"

namespace pantile::drawing {

struct Effort {
    /// Changes tried for each painted cell, on average; 0 for the first plan alone.
    std::int64_t triesPerCell = 2;
    std::int64_t leastTries = 1000;  ///< So that small textures are tried enough; none if 0 a cell.
    std::int64_t mostTries = 40'000;
    std::uint64_t seed = 1;  ///< Of the numbers that choose where to try.
};

/// As many tries as about fit into `budgetMs` beside the first plan, at the fixed rate of
/// docs/drawing.md section 5.1: the same number on every machine, quicker or slower. The first plan
/// is always made; a budget of 0 stands for it alone.
/// Units: milliseconds, not negative; more than an hour counts as an hour.
Effort effortFor(std::int64_t budgetMs, const DrawingRequest& request);

}  // namespace pantile::drawing
