#include "board/set_reduction.h"

#include <algorithm>
#include <cstddef>
#include <numeric>

namespace pantile::board {
namespace {

class Reduction {
public:
    Reduction(const Reduced& before, const std::vector<Wide>& values, Wide slack)
        : m_before(before), m_problem(before.problem), m_values(values), m_slack(slack) {
        m_reduced.taken = before.taken;
        m_reduced.problem.firstWay.push_back(0);
        for (const Limit& limit : m_problem.limits) {
            m_reduced.problem.limits.push_back({{}, limit.room});
        }
    }

    Reduced run() && {
        for (const Bundle& bundle : m_problem.bundles) decide(bundle);
        return std::move(m_reduced);
    }

private:
    /// Ways of a bundle that may be in, piece by piece.
    using Ways = std::vector<std::vector<std::uint32_t>>;

    void decide(const Bundle& bundle) {
        const Wide in = bundleReduced(m_problem, m_values, bundle);
        const Wide best = bundle.required ? in : std::max<Wide>(in, 0);
        const bool mayBeOut = !bundle.required && best <= m_slack;
        if (best - in > m_slack) return;
        const Ways ways = waysWithin(bundle, m_slack - (best - in));
        const bool single = std::all_of(ways.begin(), ways.end(),
                                        [](const auto& each) { return each.size() == 1; });
        if (!mayBeOut && single) {
            take(bundle, ways);
        } else {
            leave(bundle, ways, !mayBeOut);
        }
    }

    Ways waysWithin(const Bundle& bundle, Wide slack) const {
        Ways ways;
        for (const std::uint32_t piece : bundle.pieces) {
            const Wide best = bestReduced(m_problem, m_values, piece);
            std::vector<std::uint32_t>& kept = ways.emplace_back();
            for (std::uint32_t way = m_problem.firstWay[piece]; way < m_problem.firstWay[piece + 1];
                 ++way) {
                if (best - m_values[way] <= slack) kept.push_back(way);
            }
        }
        return ways;
    }

    void take(const Bundle& bundle, const Ways& ways) {
        for (std::size_t i = 0; i < ways.size(); ++i) {
            const std::uint32_t way = ways[i].front();
            m_reduced.taken[m_before.pieceOf[bundle.pieces[i]]] =
                static_cast<std::int32_t>(m_before.wayOf[way]);
            for (std::size_t k = 0; k < m_problem.limits.size(); ++k) {
                m_reduced.problem.limits[k].room -= m_problem.limits[k].use[way];
            }
        }
    }

    void leave(const Bundle& bundle, const Ways& ways, bool required) {
        SetProblem& left = m_reduced.problem;
        Bundle kept{{}, required};
        for (std::size_t i = 0; i < ways.size(); ++i) {
            kept.pieces.push_back(static_cast<std::uint32_t>(left.pieces()));
            m_reduced.pieceOf.push_back(m_before.pieceOf[bundle.pieces[i]]);
            for (const std::uint32_t way : ways[i]) {
                m_reduced.wayOf.push_back(m_before.wayOf[way]);
                left.value.push_back(m_problem.value[way]);
                for (std::size_t k = 0; k < left.limits.size(); ++k) {
                    left.limits[k].use.push_back(m_problem.limits[k].use[way]);
                }
            }
            left.firstWay.push_back(static_cast<std::uint32_t>(left.value.size()));
        }
        left.bundles.push_back(std::move(kept));
    }

    const Reduced& m_before;
    const SetProblem& m_problem;
    const std::vector<Wide>& m_values;
    Wide m_slack;  ///< How far a way may stay behind the best and still reach the target.
    Reduced m_reduced;
};

}  // namespace

Reduced asItIs(const SetProblem& problem) {
    Reduced left;
    left.problem.value = problem.value;
    left.problem.limits = problem.limits;
    left.problem.firstWay = problem.firstWay;
    left.problem.bundles = problem.bundles;
    left.taken.assign(problem.pieces(), kOut);
    left.pieceOf.resize(problem.pieces());
    std::iota(left.pieceOf.begin(), left.pieceOf.end(), 0U);
    left.wayOf.resize(problem.value.size());
    std::iota(left.wayOf.begin(), left.wayOf.end(), 0U);
    return left;
}

Reduced reducedFurther(const Reduced& left, const std::vector<Wide>& values, Wide slack) {
    return Reduction(left, values, slack).run();
}

Wide sumOfBest(const SetProblem& problem, const std::vector<Wide>& values) {
    Wide sum = 0;
    for (const Bundle& bundle : problem.bundles) {
        const Wide in = bundleReduced(problem, values, bundle);
        sum += bundle.required ? in : std::max<Wide>(in, 0);
    }
    return sum;
}

}  // namespace pantile::board
