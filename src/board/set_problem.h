#pragma once

// SetProblem: which of some pieces to take, and each in which of its ways, so that the sum of
// values is greatest under several linear limits. The multiple-choice, multi-constraint knapsack.

#include <cstddef>
#include <cstdint>
#include <functional>
#include <span>
#include <vector>

#include "board/wide.h"

namespace pantile::board {

inline constexpr std::int32_t kOut = -1;

/// By piece: the number of the way that it is taken in, or kOut.
using Selection = std::vector<std::int32_t>;

/// Keeps the sum of `use` over the chosen ways at or below `room`.
/// Shape: the uses of one limit are all 0 or above, or all 0 or below: then it is a least sum.
struct Limit {
    std::vector<std::int64_t> use;  ///< One for each way.
    std::int64_t room = 0;

    bool isLeastSum() const;
};

/// Pieces that are all in or all out; usually one.
struct Bundle {
    std::vector<std::uint32_t> pieces;
    bool required = false;  ///< It has to be in.
};

enum class Ties {
    Any,       ///< Of equal sets any will do.
    Earliest,  ///< By the first piece in which two differ: in before out, a lower way before a
               ///< higher.
};

/// Shape: ways are numbered through, piece after piece; every piece has at least one and is in one
/// bundle. |value| < 2^80, |use| and |room| < 2^49: so 128 bits hold every sum that the search
/// makes, and nothing can overflow.
struct SetProblem {
    std::vector<Wide> value;  ///< One for each way.
    std::vector<Limit> limits;
    std::vector<std::uint32_t> firstWay;  ///< One for each piece, and the number of ways.
    std::vector<Bundle> bundles;
    Ties ties = Ties::Any;
    /// Whether piece a is no worse than b in every respect and goes before it, so that the best set
    /// never holds b without a. Only of pieces that are bundles of their own. May be empty.
    std::function<bool(std::uint32_t a, std::uint32_t b)> isBetter;
    Selection start;  ///< A set that keeps the limits and holds what is required.

    std::size_t pieces() const { return firstWay.size() - 1; }
};

/// What there is for the ways of one piece, of a list that has one for each way of all.
template <typename Number>
std::span<const Number> ofPiece(const SetProblem& problem, const std::vector<Number>& byWay,
                                std::size_t piece) {
    const std::size_t first = problem.firstWay[piece];
    return std::span(byWay).subspan(first, problem.firstWay[piece + 1] - first);
}

/// What `chosen` leaves of each limit.
std::vector<std::int64_t> roomLeft(const SetProblem& problem, const Selection& chosen);

Wide valueOf(const SetProblem& problem, const Selection& chosen);

bool allKept(const std::vector<std::int64_t>& room);

/// By Ties::Earliest.
bool goesBefore(const Selection& a, const Selection& b);

}  // namespace pantile::board
