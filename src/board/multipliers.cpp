#include "board/multipliers.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace pantile::board {
namespace {

constexpr int kSteps = 400;
constexpr int kPatienceSteps = 12;  ///< Steps without a better bound before they are halved.

/// The bound as floating-point numbers, each limit in units of its mean use so that one step length
/// suits all.
class SmoothBound {
public:
    SmoothBound(const SetProblem& problem, const OpenPart& part) : m_limits(part.room.size()) {
        for (const std::uint32_t number : part.bundles) {
            const Bundle& bundle = problem.bundles[number];
            for (const std::uint32_t piece : bundle.pieces) addPiece(problem, piece);
            m_bundles.push_back({m_pieceEnd.size(), bundle.required});
        }
        for (std::size_t k = 0; k < m_limits; ++k) {
            m_unit.push_back(meanUse(k));
            m_room.push_back(static_cast<double>(part.room[k]) / m_unit[k]);
        }
        for (std::size_t i = 0; i < m_use.size(); ++i) m_use[i] /= m_unit[i % m_limits];
    }

    /// The bound at `price`, and in `slack` the room that its best set leaves of each limit.
    double at(const std::vector<double>& price, std::vector<double>& slack) const {
        double bound = 0;
        slack = m_room;
        for (std::size_t k = 0; k < m_limits; ++k) bound += price[k] * m_room[k];
        std::vector<std::size_t> best;
        std::size_t piece = 0;
        std::size_t way = 0;
        for (const BundleEnd& bundle : m_bundles) {
            double sum = 0;
            best.clear();
            for (; piece < bundle.pieceEnd; ++piece) {
                sum += bestWay(price, way, m_pieceEnd[piece], best);
                way = m_pieceEnd[piece];
            }
            if (sum <= 0 && !bundle.required) continue;
            bound += sum;
            for (const std::size_t taken : best) {
                for (std::size_t k = 0; k < m_limits; ++k) slack[k] -= m_use[taken * m_limits + k];
            }
        }
        return bound;
    }

    double unit(std::size_t k) const { return m_unit[k]; }

private:
    struct BundleEnd {
        std::size_t pieceEnd = 0;
        bool required = false;
    };

    void addPiece(const SetProblem& problem, std::uint32_t piece) {
        for (std::uint32_t way = problem.firstWay[piece]; way < problem.firstWay[piece + 1];
             ++way) {
            m_value.push_back(static_cast<double>(problem.value[way]));
            for (const Limit& limit : problem.limits) {
                m_use.push_back(static_cast<double>(limit.use[way]));
            }
        }
        m_pieceEnd.push_back(m_value.size());
    }

    double meanUse(std::size_t k) const {
        double total = 0;
        for (std::size_t way = 0; way < m_value.size(); ++way) {
            total += std::abs(m_use[way * m_limits + k]);
        }
        return total > 0 ? total / static_cast<double>(m_value.size()) : 1.0;
    }

    /// The greatest reduced value of the ways from `from` to before `end`, noted in `best`.
    double bestWay(const std::vector<double>& price, std::size_t from, std::size_t end,
                   std::vector<std::size_t>& best) const {
        double greatest = 0;
        std::size_t taken = end;
        for (std::size_t way = from; way < end; ++way) {
            double reduced = m_value[way];
            for (std::size_t k = 0; k < m_limits; ++k) {
                reduced -= price[k] * m_use[way * m_limits + k];
            }
            if (taken == end || reduced > greatest) {
                greatest = reduced;
                taken = way;
            }
        }
        best.push_back(taken);
        return greatest;
    }

    std::size_t m_limits;
    std::vector<BundleEnd> m_bundles;
    std::vector<std::size_t> m_pieceEnd;  ///< Where the ways of each piece end.
    std::vector<double> m_value;          ///< By way.
    std::vector<double> m_use;            ///< Way by way, each with all its uses.
    std::vector<double> m_room;
    std::vector<double> m_unit;
};

std::vector<double> descend(const SmoothBound& bound, std::size_t limits, double lowest) {
    std::vector<double> price(limits, 0.0);
    std::vector<double> slack;
    std::vector<double> best = price;
    double bestBound = bound.at(price, slack);
    double stride = 1.0;
    int withoutGain = 0;
    for (int step = 0; step < kSteps; ++step) {
        const double here = bound.at(price, slack);
        if (here < bestBound) {
            bestBound = here;
            best = price;
            withoutGain = 0;
        } else if (++withoutGain >= kPatienceSteps) {
            withoutGain = 0;
            stride *= 0.5;
            price = best;
            bound.at(price, slack);
        }
        double length = 0;
        for (std::size_t k = 0; k < limits; ++k) {
            // A limit that costs nothing and has room left needs no step.
            if (price[k] <= 0 && slack[k] > 0) slack[k] = 0;
            length += slack[k] * slack[k];
        }
        if (length <= 0) break;
        // Aiming a little below what is reachable keeps the steps alive near the optimum.
        const double aim = std::max(bestBound - lowest, std::abs(bestBound) * 1e-9);
        const double factor = stride * aim / length;
        for (std::size_t k = 0; k < limits; ++k) {
            price[k] = std::max(0.0, price[k] - factor * slack[k]);
        }
    }
    return best;
}

}  // namespace

unsigned priceScale(const SetProblem& problem) {
    constexpr unsigned kMostBits = 30;
    Wide largest = 1;
    for (const Wide& value : problem.value) largest = std::max(largest, value < 0 ? -value : value);
    unsigned scale = 0;
    while (scale < kMostBits && (largest << (scale + 1)) < (Wide{1} << 60U)) ++scale;
    return scale;
}

Multipliers findMultipliers(const SetProblem& problem, const OpenPart& part, Wide lowest,
                            unsigned scale) {
    const SmoothBound bound(problem, part);
    const std::size_t limits = part.room.size();
    const std::vector<double> price = descend(bound, limits, static_cast<double>(lowest));
    Multipliers result;
    const auto factor = static_cast<double>(std::int64_t{1} << scale);
    for (std::size_t k = 0; k < limits; ++k) {
        // Cut prices still give a valid bound; 2^60 keeps price times use far inside 128 bits.
        const auto largest = static_cast<double>(std::int64_t{1} << 60U);
        result.price.push_back(
            static_cast<std::int64_t>(std::min(price[k] / bound.unit(k) * factor, largest)));
    }
    return result;
}

std::vector<Wide> reducedValues(const SetProblem& problem, const Multipliers& multipliers,
                                unsigned scale) {
    std::vector<Wide> reduced;
    for (std::size_t way = 0; way < problem.value.size(); ++way) {
        Wide value = problem.value[way] * (Wide{1} << scale);
        for (std::size_t k = 0; k < multipliers.price.size(); ++k) {
            value -= static_cast<Wide>(multipliers.price[k]) * problem.limits[k].use[way];
        }
        reduced.push_back(value);
    }
    return reduced;
}

Wide bestReduced(const SetProblem& problem, const std::vector<Wide>& reduced, std::uint32_t piece) {
    const std::span<const Wide> ways = ofPiece(problem, reduced, piece);
    return *std::max_element(ways.begin(), ways.end());
}

Wide bundleReduced(const SetProblem& problem, const std::vector<Wide>& reduced,
                   const Bundle& bundle) {
    Wide sum = 0;
    for (const std::uint32_t piece : bundle.pieces) sum += bestReduced(problem, reduced, piece);
    return sum;
}

Wide priceOf(const Multipliers& multipliers, std::span<const std::int64_t> room) {
    Wide sum = 0;
    for (std::size_t k = 0; k < room.size(); ++k) {
        sum += static_cast<Wide>(multipliers.price[k]) * room[k];
    }
    return sum;
}

}  // namespace pantile::board
