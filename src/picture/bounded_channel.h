#pragma once

// One channel of cells whose file says between which bounds its coefficients lie. See
// docs/conversion.md section 11.

#include <cstddef>
#include <vector>

#include "picture/coefficient_fit.h"
#include "picture/group_values.h"

namespace pantile::picture {

/// Groups of cells and their values, and by how much the file's coefficients are missed: nothing
/// for one that would be rounded to what the file has. Excess: the square of what lies beyond half
/// a step, in units of the square that encoders' rounding may leave.
class BoundedChannel {
public:
    /// `equations` must live as long and have coefficients.
    explicit BoundedChannel(const CellEquations& equations);

    /// Gives every group its most likely value, then moves them until the bounds hold as well as
    /// they can. Returns the excess that is left.
    double fit(const CellGroups& groups, std::size_t count);

    const std::vector<double>& values() const { return m_values; }

    /// By how much the excess grows if the cell's value does by `by`.
    double growth(std::size_t cell, double by) const;

    /// By how much the cell's value had best grow if those of all others stay.
    double bestChange(std::size_t cell) const;

    /// Adds a group with that value.
    void addGroup(double value) { m_values.push_back(value); }

    void change(std::size_t cell, double by);

private:
    struct Part {
        std::size_t coefficient = 0;
        double weight = 0;
    };

    double beyond(std::size_t coefficient, double offset) const;
    void moveInsideBounds(const CellGroups& groups);
    void findOffsets(const CellGroups& groups);
    double excess() const;

    const CellEquations& m_equations;
    std::vector<std::vector<Part>> m_parts;  // for each cell
    std::vector<double> m_values;            // for each group
    std::vector<double> m_offsets;           // for each coefficient: what the cells say beyond it
};

}  // namespace pantile::picture
