#include "drawing/cheapest_order.h"

#include <algorithm>

namespace pantile::drawing {

CheapestOrder::CheapestOrder(std::size_t things)
    : m_things(things), m_costs(things, std::vector<std::int64_t>(std::size_t{1} << things)) {}

void CheapestOrder::raise(std::size_t thing, Subset before, std::int64_t cost) {
    const Subset all = (Subset{1} << m_things) - 1;
    const Subset others = all & ~before & ~(Subset{1} << thing);
    // Every subset of the others, from all of them down to none.
    for (Subset more = others;; more = (more - 1) & others) {
        raiseAt(thing, before | more, cost);
        if (more == 0) return;
    }
}

void CheapestOrder::raiseAt(std::size_t thing, Subset before, std::int64_t cost) {
    m_costs[thing][before] = std::max(m_costs[thing][before], cost);
}

CheapestOrder::Found CheapestOrder::cheapest(const std::vector<std::int64_t>& leftOut) const {
    const std::vector<std::int64_t> costs = costsOfSets();
    Subset bestSet = 0;
    std::int64_t best = kEndless;
    for (Subset set = 0; set < costs.size(); ++set) {
        std::int64_t whole = costs[set];
        for (std::size_t thing = 0; thing < m_things; ++thing) {
            if (!holds(set, thing)) whole = std::min(kEndless, whole + leftOut[thing]);
        }
        if (whole > best || (whole == best && set != 0)) continue;
        best = whole;
        bestSet = set;
    }
    Found found = stepsTo(bestSet, costs);
    found.cost = best;
    return found;
}

/// For each set the cheapest order of its things.
std::vector<std::int64_t> CheapestOrder::costsOfSets() const {
    std::vector<std::int64_t> costs(std::size_t{1} << m_things, kEndless);
    costs[0] = 0;
    for (Subset set = 0; set < costs.size(); ++set) {
        for (std::size_t thing = 0; thing < m_things; ++thing) {
            if (holds(set, thing)) continue;
            std::int64_t& next = costs[set | Subset{1} << thing];
            next = std::min(next, costs[set] + m_costs[thing][set]);
        }
    }
    return costs;
}

CheapestOrder::Found CheapestOrder::stepsTo(Subset set,
                                            const std::vector<std::int64_t>& costs) const {
    Found found;
    while (set != 0) {
        for (std::size_t thing = 0; thing < m_things; ++thing) {
            const Subset before = set & ~(Subset{1} << thing);
            if (!holds(set, thing) || costs[before] + m_costs[thing][before] != costs[set]) {
                continue;
            }
            found.steps.push_back({thing, before});
            set = before;
            break;
        }
    }
    std::reverse(found.steps.begin(), found.steps.end());
    return found;
}

}  // namespace pantile::drawing
