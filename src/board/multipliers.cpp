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
        for (const std::uint32_t i : part.items) {
            m_value.push_back(static_cast<double>(problem.value[i]));
        }
        for (std::size_t k = 0; k < m_limits; ++k) {
            double total = 0;
            for (const std::uint32_t i : part.items) {
                total += std::abs(static_cast<double>(problem.limits[k].use[i]));
            }
            const double unit =
                total > 0 ? total / static_cast<double>(std::max<std::size_t>(m_value.size(), 1))
                          : 1.0;
            m_unit.push_back(unit);
            m_room.push_back(static_cast<double>(part.room[k]) / unit);
        }
        for (const std::uint32_t i : part.items) {
            for (std::size_t k = 0; k < m_limits; ++k) {
                m_use.push_back(static_cast<double>(problem.limits[k].use[i]) / m_unit[k]);
            }
        }
    }

    /// The bound at `price`, and in `slack` the room that its best set leaves of each limit.
    double at(const std::vector<double>& price, std::vector<double>& slack) const {
        double bound = 0;
        slack = m_room;
        for (std::size_t k = 0; k < m_limits; ++k) bound += price[k] * m_room[k];
        for (std::size_t i = 0; i < m_value.size(); ++i) {
            const double* use = m_use.data() + i * m_limits;
            double reduced = m_value[i];
            for (std::size_t k = 0; k < m_limits; ++k) reduced -= price[k] * use[k];
            if (reduced <= 0) continue;
            bound += reduced;
            for (std::size_t k = 0; k < m_limits; ++k) slack[k] -= use[k];
        }
        return bound;
    }

    double unit(std::size_t k) const { return m_unit[k]; }

private:
    std::size_t m_limits;
    std::vector<double> m_value;
    std::vector<double> m_use;  ///< Item by item, each with all its uses.
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
    for (const Wide value : problem.value) largest = std::max(largest, value < 0 ? -value : value);
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

Wide reducedValue(const SetProblem& problem, const Multipliers& multipliers, unsigned scale,
                  std::uint32_t i) {
    Wide reduced = problem.value[i] * (Wide{1} << scale);
    for (std::size_t k = 0; k < multipliers.price.size(); ++k) {
        reduced -= static_cast<Wide>(multipliers.price[k]) * problem.limits[k].use[i];
    }
    return reduced;
}

}  // namespace pantile::board
