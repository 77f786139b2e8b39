#pragma once

// Exact search for the subset of greatest value under several linear limits: the multi-constraint
// 0/1 knapsack. chooseBest (fit.h) asks it twice, first for worth and then for time and bytes.

#include <cstddef>
#include <cstdint>
#include <functional>
#include <vector>

#include "core/progress.h"

namespace pantile::board {

/// 128 bits hold every sum that the search makes, so nothing can overflow.
__extension__ using Wide = __int128;

/// Which of the items are in, one byte each: 0 or 1.
using Selection = std::vector<std::uint8_t>;

/// Keeps the sum of `use` over the chosen items at or below `room`.
/// Shape: the uses of one limit are all 0 or above, or all 0 or below: then it is a least sum.
struct Limit {
    std::vector<std::int64_t> use;  ///< One for each item.
    std::int64_t room = 0;
};

enum class Ties {
    Any,       ///< Of equal sets any will do.
    Earliest,  ///< The set that has the earliest item in which two differ.
};

/// Shape: all vectors have one entry for each item. |value| < 2^80, |use| and |room| < 2^49.
struct SetProblem {
    std::vector<Wide> value;
    std::vector<Limit> limits;
    Ties ties = Ties::Any;
    /// Whether item a is no worse than b in every respect and goes before it, so that the best set
    /// never holds b without a. May be empty.
    std::function<bool(std::uint32_t a, std::uint32_t b)> isBetter;
    Selection start;  ///< A set that keeps the limits.
};

struct SetAnswer {
    Selection chosen;
    bool proven = false;
    bool cancelled = false;
};

/// Cost: at most `steps` nodes of a search tree; what is left of them stays in `steps`.
/// Source: depth-first branch and bound over Lagrangian bounds; M. L. Fisher, 'The Lagrangian
/// relaxation method for solving integer programming problems', Management Science 27(1), 1981.
SetAnswer searchBestSet(const SetProblem& problem, std::int64_t& steps,
                        const core::Progress& progress);

}  // namespace pantile::board
