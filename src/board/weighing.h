#pragma once

// Weighing: some textures, their variants and the limits of a load as a SetProblem, and the answer
// back as variants. chooseBest (fit.h) and cheapestExchange (exchange.h) ask it.

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "board/fit.h"
#include "board/set_search.h"
#include "core/progress.h"
#include "core/result.h"

namespace pantile::board {

/// A texture as it is weighed. No variant is worse than another or equal to an earlier one.
struct Candidate {
    std::size_t item = 0;
    std::int64_t worth = 0;
    std::vector<FitVariant> variants;     ///< By falling bytes and rising time.
    std::vector<std::size_t> variantsOf;  ///< Their numbers in the item.
    bool required = false;
    int bundle = FitItem::kNoBundle;

    std::int64_t leastBytes() const { return variants.back().bytes; }

    std::int64_t leastMs() const { return variants.front().milliseconds; }
};

Candidate candidateOf(std::span<const FitItem> items, std::size_t item);

/// By candidate: its variant, or nothing where it is out.
using Assignment = std::vector<std::optional<std::size_t>>;

struct Weighed {
    Assignment chosen;
    bool proven = false;
    Wide bound = 0;  ///< No set has a greater sum.
};

struct WeighedProblem;

/// Sums over what is in.
struct Figures {
    std::int64_t count = 0;
    std::int64_t worth = 0;
    std::int64_t bytes = 0;
    std::int64_t milliseconds = 0;
};

/// The questions about one set of candidates. `steps` is shared by all of them.
class Weighing {
public:
    Weighing(std::span<const Candidate> candidates, const FitLimits& limits, std::int64_t& steps,
             const core::Progress& progress);

    /// All that is required, in the variants that take least time within the bytes; the others out.
    /// If even those break a limit, it is given all the same. Errors: Cancelled.
    core::Result<Weighed> required() const;

    /// The greatest sum of `value` (by candidate). Errors: Cancelled.
    core::Result<Weighed> best(const std::vector<Wide>& value, const Assignment& start) const;

    /// Of the sets that are worth at least as much as `start`: the one that takes least time, then
    /// fewest bytes, then the earliest. Errors: Cancelled.
    core::Result<Weighed> quickest(const Assignment& start) const;

    /// Of the sets that hold what is required: the one of fewest bytes. Errors: Cancelled.
    core::Result<Weighed> smallest(const Assignment& start) const;

    Figures figuresOf(const Assignment& chosen) const;

private:
    core::Result<Weighed> ask(const WeighedProblem& problem) const;

    std::span<const Candidate> m_candidates;
    FitLimits m_limits;
    std::int64_t& m_steps;
    const core::Progress& m_progress;
};

/// No worse in any figure in any variant, and before it in the order of ties: the best set never
/// holds `b` without `a`, unless one is required or bound to others.
bool isBetter(const Candidate& a, const Candidate& b);

}  // namespace pantile::board
