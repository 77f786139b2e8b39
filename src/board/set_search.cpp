#include "board/set_search.h"

#include <algorithm>
#include <cassert>
#include <numeric>
#include <span>

#include "board/multipliers.h"
#include "board/set_climb.h"
#include "board/set_reduction.h"

namespace pantile::board {
namespace {

// The search goes as deep as there are pieces left to decide.
constexpr std::size_t kMaxSearchedPieces = 5000;

std::vector<std::uint32_t> numbersBelow(std::size_t count) {
    std::vector<std::uint32_t> numbers(count);
    std::iota(numbers.begin(), numbers.end(), 0U);
    return numbers;
}

/// What a bound has to reach so that its part of the tree can hold a set that we would take.
Wide targetFor(Wide bestValue, Ties ties, unsigned scale) {
    return (bestValue + (ties == Ties::Any ? 1 : 0)) * (Wide{1} << scale);
}

Wide quotientDown(Wide dividend, unsigned bits) {
    const Wide divisor = Wide{1} << bits;
    const Wide quotient = dividend / divisor;
    return quotient * divisor > dividend ? quotient - 1 : quotient;
}

/// The way of greatest reduced value, by piece.
Selection preferredWays(const SetProblem& problem, const std::vector<Wide>& values) {
    Selection ways;
    for (std::size_t piece = 0; piece < problem.pieces(); ++piece) {
        const std::span<const Wide> own = ofPiece(problem, values, piece);
        const auto best = std::max_element(own.begin(), own.end()) - own.begin();
        ways.push_back(static_cast<std::int32_t>(problem.firstWay[piece]) +
                       static_cast<std::int32_t>(best));
    }
    return ways;
}

/// Takes bundles by falling reduced value as long as they fit beside what is required.
Selection greedySet(const SetProblem& problem, const std::vector<Wide>& values,
                    const Selection& preferred) {
    Selection chosen(problem.pieces(), kOut);
    for (const Bundle& bundle : problem.bundles) {
        if (!bundle.required) continue;
        for (const std::uint32_t piece : bundle.pieces) chosen[piece] = problem.start[piece];
    }
    std::vector<Wide> gain;
    for (const Bundle& bundle : problem.bundles)
        gain.push_back(bundleReduced(problem, values, bundle));
    std::vector<std::uint32_t> order = numbersBelow(problem.bundles.size());
    std::stable_sort(order.begin(), order.end(),
                     [&](std::uint32_t a, std::uint32_t b) { return gain[a] > gain[b]; });
    std::vector<std::int64_t> room = roomLeft(problem, chosen);
    for (const std::uint32_t number : order) {
        const Bundle& bundle = problem.bundles[number];
        if (bundle.required) continue;
        std::vector<std::int64_t> left = room;
        for (const std::uint32_t piece : bundle.pieces) {
            const auto way = static_cast<std::size_t>(preferred[piece]);
            for (std::size_t k = 0; k < room.size(); ++k) left[k] -= problem.limits[k].use[way];
        }
        bool fits = true;
        for (std::size_t k = 0; k < room.size(); ++k) {
            fits = fits && (left[k] >= 0 || left[k] >= room[k]);
        }
        if (!fits) continue;
        room = std::move(left);
        for (const std::uint32_t piece : bundle.pieces) chosen[piece] = preferred[piece];
    }
    return chosen;
}

/// Better than `problem.start`, or that.
Selection startingSet(const SetProblem& problem, const std::vector<Wide>& values) {
    const Selection preferred = preferredWays(problem, values);
    const Selection greedy = greedySet(problem, values, preferred);
    const bool better = allKept(roomLeft(problem, greedy)) &&
                        valueOf(problem, greedy) > valueOf(problem, problem.start);
    return climbed(problem, preferred, better ? greedy : problem.start);
}

std::vector<std::int64_t> roomOf(const SetProblem& problem) {
    std::vector<std::int64_t> room;
    for (const Limit& limit : problem.limits) room.push_back(limit.room);
    return room;
}

enum class Bounds { Value, Feasibility };

/// Prices of Bounds::Value bound the value; those of Bounds::Feasibility bound how far a least sum
/// is exceeded, values not counted: below 0 nothing fits.
struct Prices {
    Multipliers multipliers;
    Bounds bounds = Bounds::Value;
};

std::vector<Wide> valuesUnder(const SetProblem& problem, const Prices& prices, unsigned scale) {
    std::vector<Wide> values = reducedValues(problem, prices.multipliers, scale);
    if (prices.bounds == Bounds::Feasibility) {
        for (std::size_t way = 0; way < values.size(); ++way)
            values[way] -= problem.value[way] * (Wide{1} << scale);
    }
    return values;
}

/// Prices that show when the least sum of limit `k` is out of reach: those that bound the greatest
/// sum under all other limits.
Prices pricesOfSum(const SetProblem& problem, std::size_t k, std::span<const std::uint32_t> bundles,
                   std::vector<std::int64_t> room) {
    SetProblem sum;
    for (const std::int64_t use : problem.limits[k].use) sum.value.push_back(-use);
    sum.limits = problem.limits;
    sum.firstWay = problem.firstWay;
    sum.bundles = problem.bundles;
    const auto place = static_cast<std::ptrdiff_t>(k);
    sum.limits.erase(sum.limits.begin() + place);
    const Wide lowest = -room[k];
    room.erase(room.begin() + place);
    const unsigned scale = priceScale(sum);
    Multipliers prices = findMultipliers(sum, {bundles, room}, lowest, scale);
    prices.price.insert(prices.price.begin() + place, std::int64_t{1} << scale);
    return {prices, Bounds::Feasibility};
}

/// Without what would put a least sum out of reach.
Reduced withinReach(const SetProblem& problem) {
    Reduced left = asItIs(problem);
    const unsigned scale = priceScale(problem);
    for (std::size_t k = 0; k < problem.limits.size(); ++k) {
        if (!problem.limits[k].isLeastSum()) continue;
        const std::vector<std::uint32_t> all = numbersBelow(left.problem.bundles.size());
        const std::vector<std::int64_t> room = roomOf(left.problem);
        const Prices prices = pricesOfSum(left.problem, k, all, room);
        const std::vector<Wide> values = valuesUnder(left.problem, prices, scale);
        left = reducedFurther(left, values,
                              sumOfBest(left.problem, values) + priceOf(prices.multipliers, room));
    }
    return left;
}

/// Prices, with the bound's share of all that lies from a depth of the tree on.
struct PricedSuffix {
    Prices prices;
    std::vector<Wide> suffix;
};

/// Decides on what a reduction left, piece by piece.
class TreeSearch {
public:
    /// Shape: `best` keeps the limits of `whole`, `root` is for `left.problem`.
    TreeSearch(const SetProblem& whole, Reduced left, const Multipliers& root, Selection best,
               std::int64_t& steps, const core::Progress& progress)
        : m_whole(whole),
          m_left(std::move(left)),
          m_problem(m_left.problem),
          m_progress(progress),
          m_steps(steps),
          m_scale(priceScale(whole)),
          m_current(m_left.taken),
          m_value(valueOf(whole, m_left.taken)),
          m_room(roomOf(m_problem)),
          m_best(std::move(best)),
          m_bestValue(valueOf(whole, m_best)) {
        if (isTooDeep()) return;
        orderPieces(reducedValues(m_problem, root, m_scale));
        linkBetter();
        keepPrices({root, Bounds::Value});
    }

    SetAnswer run() {
        if (isTooDeep()) {
            m_outOfSteps = true;
        } else {
            // Small trees are done before more prices would be found.
            visitFrom(std::max<std::int64_t>(m_steps - kStepsBeforePrices, 0));
            if (m_outOfSteps && m_steps > 0) {
                priceParts();
                visitFrom(0);
            }
        }
        return {m_best, 0, !m_outOfSteps && !m_cancelled, m_cancelled};
    }

private:
    static constexpr std::int64_t kStepsBetweenChecks = 8192;
    static constexpr std::int64_t kStepsBeforePrices = 2000;
    static constexpr std::size_t kPricedParts = 6;

    /// What is decided at one depth of the tree.
    struct Piece {
        std::uint32_t number = 0;
        std::size_t bundleEnd = 0;          ///< The depth behind its bundle.
        std::vector<std::int32_t> choices;  ///< Ways, and kOut where the bundle may stay out.
    };

    bool isTooDeep() const { return m_problem.pieces() > kMaxSearchedPieces; }

    Wide target() const { return targetFor(m_bestValue, m_whole.ties, m_scale); }

    /// What is least certain is decided last, and the choice of greatest reduced value tried first.
    void orderPieces(const std::vector<Wide>& values) {
        std::vector<Wide> certainty;
        for (const Bundle& bundle : m_problem.bundles)
            certainty.push_back(certaintyOf(bundle, values));
        m_bundles = numbersBelow(m_problem.bundles.size());
        std::stable_sort(m_bundles.begin(), m_bundles.end(), [&](std::uint32_t a, std::uint32_t b) {
            return certainty[a] > certainty[b];
        });
        for (const std::uint32_t number : m_bundles) addPieces(m_problem.bundles[number], values);
    }

    /// How far the second-best choice of the bundle stays behind the best.
    Wide certaintyOf(const Bundle& bundle, const std::vector<Wide>& values) const {
        const Wide in = bundleReduced(m_problem, values, bundle);
        Wide least = bundle.required ? -1 : (in < 0 ? -in : in);
        if (!bundle.required && in < 0) return least;
        for (const std::uint32_t piece : bundle.pieces) {
            const Wide best = bestReduced(m_problem, values, piece);
            int atBest = 0;
            for (std::uint32_t way = m_problem.firstWay[piece]; way < m_problem.firstWay[piece + 1];
                 ++way) {
                const Wide behind = best - values[way];
                if (behind == 0 && ++atBest == 1) continue;
                if (least < 0 || behind < least) least = behind;
            }
        }
        return least;
    }

    void addPieces(const Bundle& bundle, const std::vector<Wide>& values) {
        const std::size_t end = m_pieces.size() + bundle.pieces.size();
        const Wide in = bundleReduced(m_problem, values, bundle);
        for (std::size_t i = 0; i < bundle.pieces.size(); ++i) {
            const std::uint32_t piece = bundle.pieces[i];
            const Wide others = in - bestReduced(m_problem, values, piece);
            std::vector<std::pair<Wide, std::int32_t>> choices;
            for (std::uint32_t way = m_problem.firstWay[piece]; way < m_problem.firstWay[piece + 1];
                 ++way) {
                choices.emplace_back(values[way] + others, static_cast<std::int32_t>(way));
            }
            if (i == 0 && !bundle.required) choices.emplace_back(0, kOut);
            std::stable_sort(choices.begin(), choices.end(),
                             [](const auto& a, const auto& b) { return a.first > b.first; });
            Piece& added = m_pieces.emplace_back(Piece{piece, end, {}});
            for (const auto& choice : choices) added.choices.push_back(choice.second);
        }
    }

    /// Prices for parts of the tree: from some depths on, with the room that is left there if all
    /// above goes the way that the root prices prefer.
    void priceParts() {
        if (m_pieces.empty()) return;
        std::vector<std::int64_t> room = m_room;
        Wide value = m_value;
        std::size_t next = 0;
        for (std::size_t part = 0; part < kPricedParts; ++part) {
            const std::size_t first = m_bundles.size() * part / kPricedParts;
            for (; next < first; ++next) goPreferredWay(m_bundles[next], room, value);
            const std::span<const std::uint32_t> bundles = std::span(m_bundles).subspan(first);
            keepPrices({findMultipliers(m_problem, {bundles, room}, m_bestValue - value, m_scale),
                        Bounds::Value});
            for (std::size_t k = 0; k < room.size(); ++k) {
                if (m_whole.limits[k].isLeastSum())
                    keepPrices(pricesOfSum(m_problem, k, bundles, room));
            }
        }
    }

    void goPreferredWay(std::uint32_t number, std::vector<std::int64_t>& room, Wide& value) const {
        const std::uint32_t first = m_problem.bundles[number].pieces.front();
        const auto place = std::find_if(m_pieces.begin(), m_pieces.end(),
                                        [&](const Piece& each) { return each.number == first; });
        for (auto piece = place;
             piece != m_pieces.begin() + static_cast<std::ptrdiff_t>(place->bundleEnd); ++piece) {
            const std::int32_t way = piece->choices.front();
            if (way == kOut) return;
            value += m_problem.value[static_cast<std::size_t>(way)];
            for (std::size_t k = 0; k < room.size(); ++k)
                room[k] -= m_problem.limits[k].use[static_cast<std::size_t>(way)];
        }
    }

    void keepPrices(const Prices& prices) {
        const std::vector<Wide> values = valuesUnder(m_problem, prices, m_scale);
        PricedSuffix priced{prices, std::vector<Wide>(m_pieces.size() + 1, 0)};
        for (std::size_t depth = m_pieces.size(); depth > 0; --depth) {
            const Piece& piece = m_pieces[depth - 1];
            Wide& here = priced.suffix[depth - 1];
            here = priced.suffix[depth] + bestReduced(m_problem, values, piece.number);
            const bool mayBeOut =
                std::find(piece.choices.begin(), piece.choices.end(), kOut) != piece.choices.end();
            if (mayBeOut) here = std::max(here, priced.suffix[piece.bundleEnd]);
        }
        m_priced.push_back(std::move(priced));
    }

    /// Finds the pairs of the tree's pieces in which one is better than the other. At the lower of
    /// the two, the way that the upper one went may settle it.
    void linkBetter() {
        constexpr std::size_t kMostLinked = 2000;  // Quadratic; larger trees do without.
        m_betterAbove.resize(m_pieces.size());
        m_worseAbove.resize(m_pieces.size());
        if (!m_whole.isBetter || m_pieces.size() > kMostLinked) return;
        for (std::size_t lower = 0; lower < m_pieces.size(); ++lower) {
            const std::uint32_t here = wholePiece(lower);
            for (std::size_t upper = 0; upper < lower; ++upper) {
                const std::uint32_t above = wholePiece(upper);
                if (m_whole.isBetter(above, here)) m_betterAbove[lower].push_back(above);
                if (m_whole.isBetter(here, above)) m_worseAbove[lower].push_back(above);
            }
        }
    }

    std::uint32_t wholePiece(std::size_t depth) const {
        return m_left.pieceOf[m_pieces[depth].number];
    }

    bool hopeless(std::size_t depth) {
        const Wide need = target() - m_value * (Wide{1} << m_scale);
        const auto below = [&](const PricedSuffix& priced) {
            return priced.suffix[depth] + priceOf(priced.prices.multipliers, m_room) <
                   (priced.prices.bounds == Bounds::Value ? need : 0);
        };
        if (below(m_priced[m_lastCut])) return true;
        for (std::size_t p = 0; p < m_priced.size(); ++p) {
            if (p == m_lastCut || !below(m_priced[p])) continue;
            m_lastCut = p;
            return true;
        }
        return false;
    }

    void visitFrom(std::int64_t stepsKept) {
        m_stepsKept = stepsKept;
        m_outOfSteps = false;
        visit(0);
    }

    bool stops() {
        if (m_steps <= m_stepsKept) {
            m_outOfSteps = true;
        } else {
            --m_steps;
        }
        if (m_steps % kStepsBetweenChecks == 0 && m_progress.stopRequested()) m_cancelled = true;
        return m_outOfSteps || m_cancelled;
    }

    void visit(std::size_t depth) {
        if (stops() || hopeless(depth)) return;
        if (depth == m_pieces.size()) {
            takeIfBetter();
            return;
        }
        for (const std::int32_t choice : m_pieces[depth].choices) {
            if (choice == kOut) {
                visitWithout(depth);
            } else {
                visitWith(depth, static_cast<std::size_t>(choice));
            }
            if (m_outOfSteps || m_cancelled) return;
        }
    }

    void visitWith(std::size_t depth, std::size_t way) {
        const bool betterOut = std::any_of(m_betterAbove[depth].begin(), m_betterAbove[depth].end(),
                                           [&](auto piece) { return m_current[piece] == kOut; });
        if (betterOut || !fits(way)) return;
        std::int32_t& current = m_current[wholePiece(depth)];
        current = static_cast<std::int32_t>(m_left.wayOf[way]);
        m_value += m_problem.value[way];
        for (std::size_t k = 0; k < m_room.size(); ++k) m_room[k] -= m_problem.limits[k].use[way];
        visit(depth + 1);
        current = kOut;
        m_value -= m_problem.value[way];
        for (std::size_t k = 0; k < m_room.size(); ++k) m_room[k] += m_problem.limits[k].use[way];
    }

    bool fits(std::size_t way) const {
        for (std::size_t k = 0; k < m_room.size(); ++k) {
            const std::int64_t use = m_problem.limits[k].use[way];
            if (use > 0 && m_room[k] < use) return false;
        }
        return true;
    }

    void visitWithout(std::size_t depth) {
        const bool worseIn = std::any_of(m_worseAbove[depth].begin(), m_worseAbove[depth].end(),
                                         [&](auto piece) { return m_current[piece] != kOut; });
        if (!worseIn) visit(m_pieces[depth].bundleEnd);
    }

    void takeIfBetter() {
        if (!allKept(m_room)) return;
        const bool better =
            m_value > m_bestValue || (m_value == m_bestValue && m_whole.ties == Ties::Earliest &&
                                      goesBefore(m_current, m_best));
        if (!better) return;
        m_best = m_current;
        m_bestValue = m_value;
    }

    const SetProblem& m_whole;
    const Reduced m_left;
    const SetProblem& m_problem;  ///< Of what is left.
    const core::Progress& m_progress;
    std::int64_t& m_steps;
    std::int64_t m_stepsKept = 0;
    unsigned m_scale;
    bool m_outOfSteps = false;
    bool m_cancelled = false;

    std::vector<std::uint32_t> m_bundles;                   ///< In the order of the tree.
    std::vector<Piece> m_pieces;                            ///< By depth.
    std::vector<std::vector<std::uint32_t>> m_betterAbove;  ///< By depth; pieces of the whole.
    std::vector<std::vector<std::uint32_t>> m_worseAbove;
    std::vector<PricedSuffix> m_priced;
    std::size_t m_lastCut = 0;

    Selection m_current;  ///< Of the whole.
    Wide m_value = 0;
    std::vector<std::int64_t> m_room;
    Selection m_best;
    Wide m_bestValue;
};

}  // namespace

SetAnswer searchBestSet(const SetProblem& problem, std::int64_t& steps,
                        const core::Progress& progress) {
    assert(allKept(roomLeft(problem, problem.start)));
    if (progress.stopRequested()) return {problem.start, 0, false, true};
    const unsigned scale = priceScale(problem);
    Reduced left = withinReach(problem);
    const std::vector<std::uint32_t> all = numbersBelow(left.problem.bundles.size());
    const std::vector<std::int64_t> room = roomOf(left.problem);
    const Wide taken = valueOf(problem, left.taken);
    const Multipliers root =
        findMultipliers(left.problem, {all, room}, valueOf(problem, problem.start) - taken, scale);
    SetAnswer answer{startingSet(problem, reducedValues(problem, root, scale)), 0, true, false};

    const std::vector<Wide> values = reducedValues(left.problem, root, scale);
    const Wide bound =
        taken * (Wide{1} << scale) + priceOf(root, room) + sumOfBest(left.problem, values);
    const Wide slack = bound - targetFor(valueOf(problem, answer.chosen), problem.ties, scale);
    if (slack >= 0) {
        left = reducedFurther(left, values, slack);
        answer =
            TreeSearch(problem, std::move(left), root, std::move(answer.chosen), steps, progress)
                .run();
    }
    answer.bound = answer.proven ? valueOf(problem, answer.chosen) : quotientDown(bound, scale);
    return answer;
}

}  // namespace pantile::board
