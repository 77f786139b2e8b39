#include "picture/group_values.h"

#include <algorithm>

namespace pantile::picture {
namespace {

constexpr double kLeastVariance = 1e-9;  // keeps what rounding makes of nothing from dividing

}  // namespace

std::size_t renumber(CellGroups& groups) {
    const std::size_t unused = groups.size();
    std::vector<std::size_t> numbers(groups.size(), unused);
    std::size_t count = 0;
    for (std::size_t& group : groups) {
        if (numbers[group] == unused) numbers[group] = count++;
        group = numbers[group];
    }
    return count;
}

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

GroupValues::GroupValues(const CellEquations& equations, const CellGroups& groups,
                         std::size_t count)
    : m_size(count), m_covariance(count * count), m_values(count) {
    const std::size_t cells = groups.size();
    std::vector<double> right(count);
    for (std::size_t i = 0; i < cells; ++i) {
        right[groups[i]] += equations.right[i];
        for (std::size_t j = 0; j < cells; ++j)
            m_covariance[groups[i] * count + groups[j]] += equations.normal[i * cells + j];
    }
    invert(m_covariance, count);
    for (std::size_t i = 0; i < count; ++i) {
        for (std::size_t j = 0; j < count; ++j)
            m_values[i] += m_covariance[i * count + j] * right[j];
    }
}

double GroupValues::costOfJoining(std::size_t p, std::size_t q) const {
    const double apart = m_values[p] - m_values[q];
    const double variance = at(p, p) + at(q, q) - 2 * at(p, q);
    return apart * apart / std::max(variance, kLeastVariance);
}

void GroupValues::join(std::size_t p, std::size_t q, const std::vector<std::size_t>& alive) {
    std::vector<double> pull(m_size);
    for (const std::size_t i : alive) pull[i] = at(i, p) - at(i, q);
    const double variance = std::max(pull[p] - pull[q], kLeastVariance);
    const double shift = (m_values[p] - m_values[q]) / variance;
    for (const std::size_t i : alive) {
        m_values[i] -= pull[i] * shift;
        const double factor = pull[i] / variance;
        for (const std::size_t j : alive) m_covariance[i * m_size + j] -= factor * pull[j];
    }
}

}  // namespace pantile::picture
