#pragma once

// Settles what a bound settles: ways and bundles that no better set can hold drop out, and what
// every better set holds is taken.

#include <cstdint>
#include <vector>

#include "board/multipliers.h"
#include "board/set_problem.h"

namespace pantile::board {

/// What is left of a problem to decide.
struct Reduced {
    SetProblem problem;                  ///< Its limits hold the room that what is taken leaves.
    Selection taken;                     ///< By piece of the whole problem; kOut where not taken.
    std::vector<std::uint32_t> pieceOf;  ///< By piece that is left: its number in the whole.
    std::vector<std::uint32_t> wayOf;    ///< By way that is left.
};

/// A problem with nothing settled yet.
Reduced asItIs(const SetProblem& problem);

/// Drops every way and bundle that would take more than `slack` off the bound of `left.problem`
/// under these reduced values (by way of it). Only `value`, `limits`, `firstWay` and `bundles` of
/// the problem that is left are set. Shape: slack is 0 or above.
Reduced reducedFurther(const Reduced& left, const std::vector<Wide>& values, Wide slack);

/// The sum over all bundles of what they add at most, under these reduced values.
Wide sumOfBest(const SetProblem& problem, const std::vector<Wide>& values);

}  // namespace pantile::board
