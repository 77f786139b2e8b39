#pragma once

// Cells in groups that share a colour: the best value of each group and how sure it is. See
// docs/conversion.md section 11.

#include <cstddef>
#include <vector>

#include "picture/coefficient_fit.h"

namespace pantile::picture {

/// Shape: the group of each cell, from 0.
using CellGroups = std::vector<std::size_t>;

/// Numbers the groups in use from 0 in order of appearance; returns how many there are.
std::size_t renumber(CellGroups& groups);

/// Inverts a symmetric positive definite matrix of `n` x `n` in place.
void invert(std::vector<double>& matrix, std::size_t n);

/// One channel. Values are those at which the equations' misfit is least.
class GroupValues {
public:
    GroupValues(const CellEquations& equations, const CellGroups& groups, std::size_t count);

    const std::vector<double>& values() const { return m_values; }

    /// What the misfit grows by if the two are to be equal and all others give way.
    double costOfJoining(std::size_t p, std::size_t q) const;

    /// Makes them equal; of all groups, those in `alive` give way.
    void join(std::size_t p, std::size_t q, const std::vector<std::size_t>& alive);

private:
    double at(std::size_t row, std::size_t column) const {
        return m_covariance[row * m_size + column];
    }

    std::size_t m_size;
    std::vector<double> m_covariance;
    std::vector<double> m_values;
};

}  // namespace pantile::picture
