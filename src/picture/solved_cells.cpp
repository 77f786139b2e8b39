#include "picture/solved_cells.h"

#include <algorithm>
#include <cstddef>
#include <numeric>

#include "picture/bounded_cells.h"
#include "picture/group_values.h"

namespace pantile::picture {
namespace {

// In squares of expected errors; fitted to open art (docs/measurements.md).
constexpr double kWorthOfAColour = 40;
constexpr int kSolveRounds = 8;
constexpr int kPasses = 4;

struct CheapPair {
    std::size_t kept = 0;
    std::size_t gone = 0;
    double cost = kWorthOfAColour;
};

class Solution {
public:
    explicit Solution(const std::array<CellEquations, 3>& equations)
        : m_equations(equations), m_labels(equations[0].right.size()) {
        std::iota(m_labels.begin(), m_labels.end(), std::size_t{0});
        joinAll();
        for (int round = 0; round < kSolveRounds && changeCells(); ++round) joinAll();
    }

    const CellGroups& groups() const { return m_labels; }

    std::size_t count() const { return m_groups; }

    const std::vector<double>& values(std::size_t channel) const {
        return m_values[channel].values();
    }

private:
    void refit() {
        m_groups = renumber(m_labels);
        m_values.clear();
        for (const CellEquations& equations : m_equations)
            m_values.emplace_back(equations, m_labels, m_groups);
    }

    CheapPair cheapest(const std::vector<std::size_t>& groups) const {
        CheapPair best;
        for (auto p = groups.begin(); p != groups.end(); ++p) {
            for (auto q = p + 1; q != groups.end(); ++q) {
                double cost = 0;
                for (const GroupValues& channel : m_values) {
                    cost += channel.costOfJoining(*p, *q);
                    if (cost >= best.cost) break;
                }
                if (cost < best.cost) best = {*p, *q, cost};
            }
        }
        return best;
    }

    void joinAll() {
        refit();
        std::vector<std::size_t> groups(m_groups);
        std::iota(groups.begin(), groups.end(), std::size_t{0});
        for (CheapPair pair = cheapest(groups); pair.cost < kWorthOfAColour;
             pair = cheapest(groups)) {
            for (GroupValues& channel : m_values) channel.join(pair.kept, pair.gone, groups);
            std::erase(groups, pair.gone);
            std::replace(m_labels.begin(), m_labels.end(), pair.gone, pair.kept);
        }
        refit();
    }

    double step(std::size_t channel, std::size_t cell, std::size_t label) const {
        return values(channel)[label] - values(channel)[m_labels[cell]];
    }

    // Half the slope of the misfit at every cell.
    std::vector<double> slopes(std::size_t channel) const {
        const CellEquations& equations = m_equations.at(channel);
        const std::size_t cells = m_labels.size();
        std::vector<double> slopes(cells);
        for (std::size_t i = 0; i < cells; ++i) {
            for (std::size_t j = 0; j < cells; ++j)
                slopes[i] += equations.normal[i * cells + j] * values(channel)[m_labels[j]];
            slopes[i] -= equations.right[i];
        }
        return slopes;
    }

    using Slopes = std::array<std::vector<double>, 3>;

    std::size_t bestLabel(const Slopes& slopes, std::size_t cell) const {
        const std::size_t diagonal = cell * m_labels.size() + cell;
        std::size_t best = m_labels[cell];
        double least = -1e-6;  // less is rounding
        for (std::size_t label = 0; label < m_groups; ++label) {
            double change = 0;
            for (std::size_t channel = 0; channel < 3; ++channel) {
                const double by = step(channel, cell, label);
                change += by * (2 * slopes.at(channel)[cell] +
                                by * m_equations.at(channel).normal[diagonal]);
            }
            if (change < least) {
                least = change;
                best = label;
            }
        }
        return best;
    }

    void relabel(Slopes& slopes, std::size_t cell, std::size_t label) {
        const std::size_t cells = m_labels.size();
        for (std::size_t channel = 0; channel < 3; ++channel) {
            const double by = step(channel, cell, label);
            const std::vector<double>& normal = m_equations.at(channel).normal;
            for (std::size_t j = 0; j < cells; ++j)
                slopes.at(channel)[j] += by * normal[cell * cells + j];
        }
        m_labels[cell] = label;
    }

    // Whether any cell changed.
    bool changeCells() {
        Slopes all{slopes(0), slopes(1), slopes(2)};
        bool changed = false;
        for (int pass = 0; pass < kPasses; ++pass) {
            bool changedNow = false;
            for (std::size_t cell = 0; cell < m_labels.size(); ++cell) {
                const std::size_t label = bestLabel(all, cell);
                if (label == m_labels[cell]) continue;
                relabel(all, cell, label);
                changedNow = true;
            }
            if (!changedNow) break;
            changed = true;
        }
        return changed;
    }

    const std::array<CellEquations, 3>& m_equations;
    CellGroups m_labels;
    std::size_t m_groups = 0;
    std::vector<GroupValues> m_values;
};

template <typename Groups>
std::vector<Ycc> solvedColours(const Groups& solved) {
    std::vector<Ycc> colours(solved.groups().size());
    for (std::size_t channel = 0; channel < 3; ++channel) {
        const double middle = channel == 0 ? 0 : 128;
        for (std::size_t i = 0; i < colours.size(); ++i)
            colours[i].values.at(channel) = solved.values(channel)[solved.groups()[i]] - middle;
    }
    return colours;
}

}  // namespace

std::vector<Ycc> solveCells(const std::array<CellEquations, 3>& equations) {
    const Solution solution(equations);
    if (equations[0].coefficients.empty() || solution.count() > kMostBoundedGroups)
        return solvedColours(solution);
    const BoundedCells bounded(equations, solution.groups());
    return bounded.isOfCells() ? solvedColours(bounded) : solvedColours(solution);
}

}  // namespace pantile::picture
