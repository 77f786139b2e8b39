#pragma once

// Improves a set step by step: where the exact search (set_search.h) begins.

#include "board/set_problem.h"

namespace pantile::board {

/// Puts bundles in, takes them out, exchanges two, and changes the ways of one piece or of two, as
/// long as that raises the value and keeps the limits. `preferred` has a way for each piece: the
/// one in which pieces of larger bundles come in. Cost: at most a fixed number of trials.
Selection climbed(const SetProblem& problem, const Selection& preferred, Selection chosen);

}  // namespace pantile::board
