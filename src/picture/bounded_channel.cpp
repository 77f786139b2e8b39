#include "picture/bounded_channel.h"

#include <cmath>

namespace pantile::picture {
namespace {

constexpr double kRoundingSquare = 0.25;  // of encoders' samples and transforms

}  // namespace

BoundedChannel::BoundedChannel(const CellEquations& equations)
    : m_equations(equations), m_parts(equations.right.size()) {
    for (std::size_t i = 0; i < equations.coefficients.size(); ++i) {
        for (const CellShare& share : equations.coefficients[i].shares)
            m_parts[share.cell].push_back({i, share.weight});
    }
}

double BoundedChannel::fit(const CellGroups& groups, std::size_t count) {
    m_values = GroupValues(m_equations, groups, count).values();
    moveInsideBounds(groups);
    findOffsets(groups);
    return excess();
}

double BoundedChannel::growth(std::size_t cell, double by) const {
    double sum = 0;
    for (const Part& part : m_parts[cell]) {
        const double before = beyond(part.coefficient, m_offsets[part.coefficient]);
        const double after =
            beyond(part.coefficient, m_offsets[part.coefficient] + part.weight * by);
        sum += after * after - before * before;
    }
    return sum / kRoundingSquare;
}

// Newton's method on the sum of squares, which is convex and smooth but for its second derivative.
double BoundedChannel::bestChange(std::size_t cell) const {
    constexpr int kSteps = 8;
    constexpr double kNearly = 1e-9;
    double by = 0;
    for (int step = 0; step < kSteps; ++step) {
        double slope = 0;
        double curve = 1e-3;
        for (const Part& part : m_parts[cell]) {
            const double over =
                beyond(part.coefficient, m_offsets[part.coefficient] + part.weight * by);
            if (over == 0) continue;
            slope += part.weight * over;
            curve += part.weight * part.weight;
        }
        if (std::abs(slope) < kNearly) break;
        by -= slope / curve;
    }
    return by;
}

void BoundedChannel::change(std::size_t cell, double by) {
    for (const Part& part : m_parts[cell]) m_offsets[part.coefficient] += part.weight * by;
}

double BoundedChannel::beyond(std::size_t coefficient, double offset) const {
    const double half = m_equations.coefficients[coefficient].step / 2;
    if (offset > half) return offset - half;
    return offset < -half ? offset + half : 0;
}

// Newton's method again, for all groups at once.
void BoundedChannel::moveInsideBounds(const CellGroups& groups) {
    constexpr int kSteps = 30;
    constexpr double kNothing = 1e-9;
    constexpr double kHold = 0.05;  // keeps groups that nothing pulls where they are
    const std::size_t count = m_values.size();
    for (int step = 0; step < kSteps; ++step) {
        std::vector<double> curve(count * count);
        std::vector<double> slope(count);
        findOffsets(groups);
        if (excess() < kNothing) return;
        for (std::size_t i = 0; i < m_offsets.size(); ++i) {
            const double over = beyond(i, m_offsets[i]);
            if (over == 0) continue;
            const std::vector<CellShare>& shares = m_equations.coefficients[i].shares;
            for (const CellShare& p : shares) {
                slope[groups[p.cell]] += p.weight * over;
                for (const CellShare& q : shares)
                    curve[groups[p.cell] * count + groups[q.cell]] += p.weight * q.weight;
            }
        }
        for (std::size_t i = 0; i < count; ++i) curve[i * count + i] += kHold;
        invert(curve, count);
        for (std::size_t i = 0; i < count; ++i) {
            for (std::size_t j = 0; j < count; ++j) m_values[i] -= curve[i * count + j] * slope[j];
        }
    }
}

void BoundedChannel::findOffsets(const CellGroups& groups) {
    m_offsets.clear();
    for (const CellCoefficient& coefficient : m_equations.coefficients) {
        double offset = -coefficient.value;
        for (const CellShare& share : coefficient.shares)
            offset += share.weight * m_values[groups[share.cell]];
        m_offsets.push_back(offset);
    }
}

double BoundedChannel::excess() const {
    double sum = 0;
    for (std::size_t i = 0; i < m_offsets.size(); ++i) {
        const double over = beyond(i, m_offsets[i]);
        sum += over * over;
    }
    return sum / kRoundingSquare;
}

}  // namespace pantile::picture
