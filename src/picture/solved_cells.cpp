#include "picture/solved_cells.h"

#include <algorithm>
#include <cstddef>
#include <numeric>

namespace pantile::picture {
namespace {

// In squares of expected errors; fitted to open art (docs/measurements.md).
constexpr double kWorthOfAColour = 40;
constexpr double kLeastVariance = 1e-9;  // keeps what rounding makes of nothing from dividing
constexpr int kRounds = 8;
constexpr int kPasses = 4;

using Labels = std::vector<std::size_t>;

// Inverts a symmetric positive definite matrix in place.
void invert(std::vector<double>& matrix, std::size_t n) {
    for (std::size_t pivot = 0; pivot < n; ++pivot) {
        double* const from = &matrix[pivot * n];
        const double scale = 1 / from[pivot];
        from[pivot] = 1;
        for (std::size_t j = 0; j < n; ++j) from[j] *= scale;
        for (std::size_t i = 0; i < n; ++i) {
            double* const to = &matrix[i * n];
            const double factor = to[pivot];
            if (i == pivot || factor == 0) continue;
            to[pivot] = 0;
            for (std::size_t j = 0; j < n; ++j) to[j] -= factor * from[j];
        }
    }
}

// Numbers the labels in use from 0 in order of appearance; returns how many there are.
std::size_t renumber(Labels& labels) {
    const std::size_t unused = labels.size();
    std::vector<std::size_t> numbers(labels.size(), unused);
    std::size_t count = 0;
    for (std::size_t& label : labels) {
        if (numbers[label] == unused) numbers[label] = count++;
        label = numbers[label];
    }
    return count;
}

// One channel's best values for groups of cells, and how sure they are.
class GroupValues {
public:
    GroupValues(const CellEquations& equations, const Labels& labels, std::size_t groups)
        : m_size(groups), m_covariance(groups * groups), m_values(groups) {
        const std::size_t cells = labels.size();
        std::vector<double> right(groups);
        for (std::size_t i = 0; i < cells; ++i) {
            right[labels[i]] += equations.right[i];
            for (std::size_t j = 0; j < cells; ++j)
                m_covariance[labels[i] * groups + labels[j]] += equations.normal[i * cells + j];
        }
        invert(m_covariance, groups);
        for (std::size_t i = 0; i < groups; ++i) {
            for (std::size_t j = 0; j < groups; ++j)
                m_values[i] += m_covariance[i * groups + j] * right[j];
        }
    }

    double value(std::size_t group) const { return m_values[group]; }

    double costOfJoining(std::size_t p, std::size_t q) const {
        const double apart = m_values[p] - m_values[q];
        const double variance = at(p, p) + at(q, q) - 2 * at(p, q);
        return apart * apart / std::max(variance, kLeastVariance);
    }

    // All of `groups` give way as they must if `p` and `q` are to be equal.
    void join(std::size_t p, std::size_t q, const std::vector<std::size_t>& groups) {
        std::vector<double> pull(m_size);
        for (const std::size_t i : groups) pull[i] = at(i, p) - at(i, q);
        const double variance = std::max(pull[p] - pull[q], kLeastVariance);
        const double shift = (m_values[p] - m_values[q]) / variance;
        for (const std::size_t i : groups) {
            m_values[i] -= pull[i] * shift;
            const double factor = pull[i] / variance;
            for (const std::size_t j : groups) m_covariance[i * m_size + j] -= factor * pull[j];
        }
    }

private:
    double at(std::size_t row, std::size_t column) const {
        return m_covariance[row * m_size + column];
    }

    std::size_t m_size;
    std::vector<double> m_covariance;
    std::vector<double> m_values;
};

struct Pair {
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
        for (int round = 0; round < kRounds && changeCells(); ++round) joinAll();
    }

    std::vector<Ycc> colours() const {
        std::vector<Ycc> colours(m_labels.size());
        for (std::size_t channel = 0; channel < 3; ++channel) {
            const double middle = channel == 0 ? 0 : 128;
            for (std::size_t i = 0; i < colours.size(); ++i)
                colours[i].values.at(channel) = m_values[channel].value(m_labels[i]) - middle;
        }
        return colours;
    }

private:
    void refit() {
        m_groups = renumber(m_labels);
        m_values.clear();
        for (const CellEquations& equations : m_equations)
            m_values.emplace_back(equations, m_labels, m_groups);
    }

    Pair cheapest(const std::vector<std::size_t>& groups) const {
        Pair best;
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
        for (Pair pair = cheapest(groups); pair.cost < kWorthOfAColour; pair = cheapest(groups)) {
            for (GroupValues& channel : m_values) channel.join(pair.kept, pair.gone, groups);
            std::erase(groups, pair.gone);
            std::replace(m_labels.begin(), m_labels.end(), pair.gone, pair.kept);
        }
        refit();
    }

    double step(std::size_t channel, std::size_t cell, std::size_t label) const {
        return m_values[channel].value(label) - m_values[channel].value(m_labels[cell]);
    }

    // Half the slope of the misfit at every cell.
    std::vector<double> slopes(std::size_t channel) const {
        const CellEquations& equations = m_equations.at(channel);
        const std::size_t cells = m_labels.size();
        std::vector<double> slopes(cells);
        for (std::size_t i = 0; i < cells; ++i) {
            for (std::size_t j = 0; j < cells; ++j)
                slopes[i] += equations.normal[i * cells + j] * m_values[channel].value(m_labels[j]);
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
    Labels m_labels;
    std::size_t m_groups = 0;
    std::vector<GroupValues> m_values;
};

}  // namespace

std::vector<Ycc> solveCells(const std::array<CellEquations, 3>& equations) {
    return Solution(equations).colours();
}

}  // namespace pantile::picture
