#pragma once

// Lagrangian multipliers: prices for the limits of a SetProblem. Any prices of 0 and above give an
// upper bound for the value of every set; good ones give a tight one.

#include <cstdint>
#include <span>
#include <vector>

#include "board/set_problem.h"

namespace pantile::board {

/// Prices in whole numbers, so that bounds are exact. Units: value times 2^scale for one of use.
struct Multipliers {
    std::vector<std::int64_t> price;  ///< One for each limit, 0 or above.
};

/// The part of a problem that is still open: some bundles, by number, and the room they may use.
struct OpenPart {
    std::span<const std::uint32_t> bundles;
    std::span<const std::int64_t> room;  ///< One for each limit.
};

/// How many bits values are scaled by, so that prices come out fine-grained and still fit 64 bits.
unsigned priceScale(const SetProblem& problem);

/// Prices that make the bound of `part` small, by subgradient steps. `lowest` is a value that is
/// known to be reachable in it. Computed by + - * / alone: the same on every machine.
/// Source: M. Held, P. Wolfe, H. P. Crowder, 'Validation of subgradient optimization', Mathematical
/// Programming 6, 1974.
Multipliers findMultipliers(const SetProblem& problem, const OpenPart& part, Wide lowest,
                            unsigned scale);

/// What each way adds to the bound if it is taken, scaled: its value less the price of its uses.
std::vector<Wide> reducedValues(const SetProblem& problem, const Multipliers& multipliers,
                                unsigned scale);

/// The greatest reduced value of a piece's ways.
Wide bestReduced(const SetProblem& problem, const std::vector<Wide>& reduced, std::uint32_t piece);

/// What a bundle that is in adds to the bound at most; out it adds 0.
Wide bundleReduced(const SetProblem& problem, const std::vector<Wide>& reduced,
                   const Bundle& bundle);

/// The price of all that room.
Wide priceOf(const Multipliers& multipliers, std::span<const std::int64_t> room);

}  // namespace pantile::board
