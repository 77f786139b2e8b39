#pragma once

// CheapestOrder: the order of a few things, each of which costs by what came before it.

#include <cstddef>
#include <cstdint>
#include <limits>
#include <vector>

namespace pantile::drawing {

/// Which of the things, by bits.
using Subset = std::uint32_t;

constexpr bool holds(Subset set, std::size_t thing) {
    return (set >> thing & 1U) != 0;
}

/// Shape: at most kMost things, numbered from 0. Memory: 2^things costs for each.
class CheapestOrder {
public:
    static constexpr std::size_t kMost = 17;
    static constexpr std::int64_t kEndless = std::numeric_limits<std::int64_t>::max() / 4;

    explicit CheapestOrder(std::size_t things);

    /// What a thing costs at the least behind those of `before`, and so behind any more as well.
    void raise(std::size_t thing, Subset before, std::int64_t cost);

    /// The same behind those of `before` alone.
    void raiseAt(std::size_t thing, Subset before, std::int64_t cost);

    struct Step {
        std::size_t thing;
        Subset before;
    };

    struct Found {
        std::int64_t cost = 0;
        std::vector<Step> steps;  ///< Without the things left out.
    };

    /// The cheapest order of all things or some, where each one left out costs `leftOut` of it;
    /// those of kEndless are never left out.
    /// Source: M. Held, R. Karp, 'A dynamic programming approach to sequencing problems', Journal
    /// of the Society for Industrial and Applied Mathematics 10(1), 1962.
    Found cheapest(const std::vector<std::int64_t>& leftOut) const;

private:
    std::vector<std::int64_t> costsOfSets() const;
    Found stepsTo(Subset set, const std::vector<std::int64_t>& costs) const;

    std::size_t m_things;
    std::vector<std::vector<std::int64_t>> m_costs;  ///< By thing and what came before it.
};

}  // namespace pantile::drawing
