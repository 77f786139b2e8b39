#pragma once

// Exact search for the best set of a SetProblem. chooseBest (fit.h) asks it twice, first for worth
// and then for time and bytes.

#include <cstdint>

#include "board/set_problem.h"
#include "core/progress.h"

namespace pantile::board {

struct SetAnswer {
    Selection chosen;
    Wide bound = 0;  ///< No set is worth more. The value of `chosen` if that is proven.
    bool proven = false;
    bool cancelled = false;
};

/// Cost: at most `steps` nodes of a search tree; what is left of them stays in `steps`.
/// Source: depth-first branch and bound over Lagrangian bounds; M. L. Fisher, 'The Lagrangian
/// relaxation method for solving integer programming problems', Management Science 27(1), 1981.
SetAnswer searchBestSet(const SetProblem& problem, std::int64_t& steps,
                        const core::Progress& progress);

}  // namespace pantile::board
