#include "board/set_search.h"

#include <algorithm>
#include <cassert>

#include "board/multipliers.h"

namespace pantile::board {
namespace {

std::vector<std::int64_t> roomLeft(const SetProblem& problem, const Selection& chosen) {
    std::vector<std::int64_t> room;
    for (const Limit& limit : problem.limits) {
        std::int64_t left = limit.room;
        for (std::size_t i = 0; i < chosen.size(); ++i) {
            if (chosen[i] != 0) left -= limit.use[i];
        }
        room.push_back(left);
    }
    return room;
}

Wide valueOf(const SetProblem& problem, const Selection& chosen) {
    Wide value = 0;
    for (std::size_t i = 0; i < chosen.size(); ++i) {
        if (chosen[i] != 0) value += problem.value[i];
    }
    return value;
}

bool allKept(const std::vector<std::int64_t>& room) {
    return std::all_of(room.begin(), room.end(), [](std::int64_t left) { return left >= 0; });
}

/// Whether `a` has the earliest item in which the two differ.
bool goesBefore(const Selection& a, const Selection& b) {
    const auto [inA, inB] = std::mismatch(a.begin(), a.end(), b.begin());
    return inA != a.end() && *inA > *inB;
}

/// Adds, drops and swaps single items as long as that raises the value.
class Climber {
public:
    Climber(const SetProblem& problem, Selection& chosen)
        : m_problem(problem), m_chosen(chosen), m_room(roomLeft(problem, chosen)) {}

    void climb() {
        while (m_trials < kMostTrials && pass()) {
        }
    }

private:
    static constexpr std::int64_t kMostTrials = 20'000'000;

    bool pass() {
        bool better = false;
        for (std::size_t i = 0; i < m_chosen.size() && m_trials < kMostTrials; ++i) {
            ++m_trials;
            if (m_chosen[i] == 0) {
                better |= tryChange(i, i) || trySwaps(i);
            } else {
                better |= tryChange(i, i);
            }
        }
        return better;
    }

    bool trySwaps(std::size_t in) {
        for (std::size_t out = 0; out < m_chosen.size(); ++out) {
            if (m_chosen[out] == 0) continue;
            ++m_trials;
            if (tryChange(in, out)) return true;
        }
        return false;
    }

    /// Flips both items, or the one if they are the same, if that is allowed and raises the value.
    bool tryChange(std::size_t a, std::size_t b) {
        Wide gain = signedValue(a);
        if (a != b) gain += signedValue(b);
        if (gain <= 0) return false;
        for (std::size_t k = 0; k < m_room.size(); ++k) {
            if (m_room[k] - useOf(k, a, b) < 0) return false;
        }
        for (std::size_t k = 0; k < m_room.size(); ++k) m_room[k] -= useOf(k, a, b);
        m_chosen[a] ^= 1U;
        if (a != b) m_chosen[b] ^= 1U;
        return true;
    }

    Wide signedValue(std::size_t i) const {
        return m_chosen[i] != 0 ? -m_problem.value[i] : m_problem.value[i];
    }

    std::int64_t useOf(std::size_t k, std::size_t a, std::size_t b) const {
        const std::vector<std::int64_t>& use = m_problem.limits[k].use;
        const auto change = [&](std::size_t i) { return m_chosen[i] != 0 ? -use[i] : use[i]; };
        return a == b ? change(a) : change(a) + change(b);
    }

    const SetProblem& m_problem;
    Selection& m_chosen;
    std::vector<std::int64_t> m_room;
    std::int64_t m_trials = 0;
};

/// Takes items by falling reduced value as long as they fit; better than `start`, or `start`.
Selection startingSet(const SetProblem& problem, const std::vector<Wide>& reduced) {
    std::vector<std::uint32_t> order(problem.value.size());
    for (std::size_t i = 0; i < order.size(); ++i) order[i] = static_cast<std::uint32_t>(i);
    std::stable_sort(order.begin(), order.end(),
                     [&](std::uint32_t a, std::uint32_t b) { return reduced[a] > reduced[b]; });
    Selection greedy(problem.value.size(), 0);
    std::vector<std::int64_t> room = roomLeft(problem, greedy);
    for (const std::uint32_t i : order) {
        bool fits = true;
        for (std::size_t k = 0; k < room.size(); ++k) {
            fits = fits && (problem.limits[k].use[i] <= 0 || problem.limits[k].use[i] <= room[k]);
        }
        if (!fits) continue;
        greedy[i] = 1;
        for (std::size_t k = 0; k < room.size(); ++k) room[k] -= problem.limits[k].use[i];
    }
    const bool better = allKept(room) && valueOf(problem, greedy) > valueOf(problem, problem.start);
    Selection best = better ? greedy : problem.start;
    Climber(problem, best).climb();
    return best;
}

enum class Bounds { Value, Feasibility };

/// Prices, with the bound's share of all items from a depth of the tree on.
struct PricedSuffix {
    Multipliers multipliers;
    Bounds bounds = Bounds::Value;  ///< With Feasibility, values do not count: below 0 none fits.
    std::vector<Wide> suffix;
};

class TreeSearch {
public:
    TreeSearch(const SetProblem& problem, std::int64_t& steps, const core::Progress& progress)
        : m_problem(problem),
          m_progress(progress),
          m_steps(steps),
          m_scale(priceScale(problem)),
          m_current(problem.value.size(), 0) {}

    SetAnswer run() {
        m_cancelled = m_progress.stopRequested();
        prepare();
        m_room = roomLeft(m_problem, m_current);
        m_value = valueOf(m_problem, m_current);
        visit(0);
        return {m_best, !m_outOfSteps && !m_cancelled, m_cancelled};
    }

private:
    static constexpr std::int64_t kStepsBetweenChecks = 8192;
    static constexpr std::size_t kPricedParts = 6;

    /// Finds root prices and a first set, and leaves to the tree only those items whose choice the
    /// bound does not settle.
    void prepare() {
        std::vector<std::uint32_t> all(m_problem.value.size());
        for (std::size_t i = 0; i < all.size(); ++i) all[i] = static_cast<std::uint32_t>(i);
        const std::vector<std::int64_t> room = roomLeft(m_problem, m_current);
        const Multipliers root =
            findMultipliers(m_problem, {all, room}, valueOf(m_problem, m_problem.start), m_scale);
        std::vector<Wide> reduced;
        Wide bound = 0;
        for (std::size_t k = 0; k < room.size(); ++k) {
            bound += static_cast<Wide>(root.price[k]) * room[k];
        }
        for (const std::uint32_t i : all) {
            reduced.push_back(reducedValue(m_problem, root, m_scale, i));
            if (reduced[i] > 0) bound += reduced[i];
        }
        m_best = startingSet(m_problem, reduced);
        m_bestValue = valueOf(m_problem, m_best);

        const auto size = [&](std::uint32_t i) {
            return reduced[i] < 0 ? -reduced[i] : reduced[i];
        };
        for (const std::uint32_t i : all) {
            if (bound - size(i) >= target()) {
                m_order.push_back(i);
            } else {
                m_current[i] = reduced[i] > 0 ? 1 : 0;
            }
        }
        std::stable_sort(m_order.begin(), m_order.end(),
                         [&](std::uint32_t a, std::uint32_t b) { return size(a) > size(b); });
        m_takeFirst.resize(all.size());
        for (const std::uint32_t i : all) m_takeFirst[i] = reduced[i] > 0 ? 1 : 0;
        linkBetter();
        keepPrices(root, Bounds::Value);
        priceParts();
    }

    /// Prices for parts of the tree: from some depths on, with the room that is left there if all
    /// items above go the way that the root prices prefer.
    void priceParts() {
        Selection preferred = m_current;
        std::size_t next = 0;
        for (std::size_t part = 0; part < kPricedParts; ++part) {
            const std::size_t depth = m_order.size() * part / kPricedParts;
            for (; next < depth; ++next) preferred[m_order[next]] = m_takeFirst[m_order[next]];
            const std::vector<std::int64_t> room = roomLeft(m_problem, preferred);
            const std::span<const std::uint32_t> items = std::span(m_order).subspan(depth);
            keepPrices(findMultipliers(m_problem, {items, room},
                                       m_bestValue - valueOf(m_problem, preferred), m_scale),
                       Bounds::Value);
            for (std::size_t k = 0; k < room.size(); ++k) {
                if (isLeastSum(m_problem.limits[k]))
                    keepPrices(pricesOfSum(k, items, room), Bounds::Feasibility);
            }
        }
    }

    static bool isLeastSum(const Limit& limit) {
        return std::any_of(limit.use.begin(), limit.use.end(),
                           [](std::int64_t use) { return use < 0; });
    }

    /// Prices that show when the least sum of limit `k` is out of reach: those that bound the
    /// greatest sum under all other limits.
    Multipliers pricesOfSum(std::size_t k, std::span<const std::uint32_t> items,
                            std::vector<std::int64_t> room) const {
        SetProblem sum;
        for (const std::int64_t use : m_problem.limits[k].use) sum.value.push_back(-use);
        sum.limits = m_problem.limits;
        const auto place = static_cast<std::ptrdiff_t>(k);
        sum.limits.erase(sum.limits.begin() + place);
        const Wide lowest = -room[k];
        room.erase(room.begin() + place);
        const unsigned scale = priceScale(sum);
        Multipliers prices = findMultipliers(sum, {items, room}, lowest, scale);
        prices.price.insert(prices.price.begin() + place, std::int64_t{1} << scale);
        return prices;
    }

    void keepPrices(const Multipliers& multipliers, Bounds bounds) {
        PricedSuffix priced{multipliers, bounds, std::vector<Wide>(m_order.size() + 1, 0)};
        for (std::size_t depth = m_order.size(); depth > 0; --depth) {
            const std::uint32_t item = m_order[depth - 1];
            Wide reduced = reducedValue(m_problem, multipliers, m_scale, item);
            if (bounds == Bounds::Feasibility) {
                reduced -= m_problem.value[item] * (Wide{1} << m_scale);
            }
            priced.suffix[depth - 1] = priced.suffix[depth] + std::max<Wide>(reduced, 0);
        }
        m_priced.push_back(std::move(priced));
    }

    /// Finds the pairs of the tree's items in which one is better than the other. At the lower of
    /// the two, the way that the upper one went may settle it.
    void linkBetter() {
        constexpr std::size_t kMostLinked = 2000;  // Quadratic; larger trees do without.
        m_betterAbove.resize(m_problem.value.size());
        m_worseAbove.resize(m_problem.value.size());
        if (!m_problem.isBetter || m_order.size() > kMostLinked) return;
        for (std::size_t lower = 0; lower < m_order.size(); ++lower) {
            for (std::size_t upper = 0; upper < lower; ++upper) {
                const std::uint32_t above = m_order[upper];
                const std::uint32_t here = m_order[lower];
                if (m_problem.isBetter(above, here)) m_betterAbove[here].push_back(above);
                if (m_problem.isBetter(here, above)) m_worseAbove[here].push_back(above);
            }
        }
    }

    /// What a bound has to reach so that its part of the tree can hold a set that we would take.
    Wide target() const {
        return (m_bestValue + (m_problem.ties == Ties::Any ? 1 : 0)) * (Wide{1} << m_scale);
    }

    bool hopeless(std::size_t depth) {
        const Wide need = target() - m_value * (Wide{1} << m_scale);
        const auto below = [&](const PricedSuffix& priced) {
            Wide bound = priced.suffix[depth];
            for (std::size_t k = 0; k < m_room.size(); ++k) {
                bound += static_cast<Wide>(priced.multipliers.price[k]) * m_room[k];
            }
            return bound < (priced.bounds == Bounds::Value ? need : 0);
        };
        if (below(m_priced[m_lastCut])) return true;
        for (std::size_t p = 0; p < m_priced.size(); ++p) {
            if (p == m_lastCut || !below(m_priced[p])) continue;
            m_lastCut = p;
            return true;
        }
        return false;
    }

    void visit(std::size_t depth) {
        if (--m_steps < 0) {
            m_outOfSteps = true;
            return;
        }
        if (m_steps % kStepsBetweenChecks == 0 && m_progress.stopRequested()) m_cancelled = true;
        if (m_cancelled || hopeless(depth)) return;
        if (depth == m_order.size()) {
            takeIfBetter();
            return;
        }
        const std::uint32_t item = m_order[depth];
        if (m_takeFirst[item] != 0) {
            visitWith(item, depth);
            visitWithout(item, depth);
        } else {
            visitWithout(item, depth);
            visitWith(item, depth);
        }
    }

    void visitWith(std::uint32_t item, std::size_t depth) {
        if (m_outOfSteps || m_cancelled) return;
        for (const std::uint32_t better : m_betterAbove[item]) {
            if (m_current[better] == 0) return;
        }
        bool fits = true;
        for (std::size_t k = 0; k < m_room.size(); ++k) {
            const std::int64_t use = m_problem.limits[k].use[item];
            fits = fits && (use <= 0 || m_room[k] >= use);
        }
        if (!fits) return;
        m_current[item] = 1;
        m_value += m_problem.value[item];
        for (std::size_t k = 0; k < m_room.size(); ++k) {
            m_room[k] -= m_problem.limits[k].use[item];
        }
        visit(depth + 1);
        m_current[item] = 0;
        m_value -= m_problem.value[item];
        for (std::size_t k = 0; k < m_room.size(); ++k) {
            m_room[k] += m_problem.limits[k].use[item];
        }
    }

    void visitWithout(std::uint32_t item, std::size_t depth) {
        if (m_outOfSteps || m_cancelled) return;
        for (const std::uint32_t worse : m_worseAbove[item]) {
            if (m_current[worse] != 0) return;
        }
        visit(depth + 1);
    }

    void takeIfBetter() {
        if (!allKept(m_room)) return;
        const bool better =
            m_value > m_bestValue || (m_value == m_bestValue && m_problem.ties == Ties::Earliest &&
                                      goesBefore(m_current, m_best));
        if (!better) return;
        m_best = m_current;
        m_bestValue = m_value;
    }

    const SetProblem& m_problem;
    const core::Progress& m_progress;
    std::int64_t& m_steps;
    unsigned m_scale;
    bool m_outOfSteps = false;
    bool m_cancelled = false;

    std::vector<std::uint32_t> m_order;  ///< The tree's items; depth d decides on m_order[d].
    Selection m_takeFirst;
    std::vector<std::vector<std::uint32_t>> m_betterAbove;
    std::vector<std::vector<std::uint32_t>> m_worseAbove;
    std::vector<PricedSuffix> m_priced;
    std::size_t m_lastCut = 0;

    Selection m_current;
    Wide m_value = 0;
    std::vector<std::int64_t> m_room;
    Selection m_best;
    Wide m_bestValue = 0;
};

}  // namespace

SetAnswer searchBestSet(const SetProblem& problem, std::int64_t& steps,
                        const core::Progress& progress) {
    assert(allKept(roomLeft(problem, problem.start)));
    return TreeSearch(problem, steps, progress).run();
}

}  // namespace pantile::board
