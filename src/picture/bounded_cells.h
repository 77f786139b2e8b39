#pragma once

// Cells of few colours that a JPEG file's coefficients allow. See docs/conversion.md section 11.

#include <array>
#include <vector>

#include "picture/bounded_channel.h"

namespace pantile::picture {

/// Above this many groups nothing is tried: it is no art of few colours.
inline constexpr std::size_t kMostBoundedGroups = 64;

/// Starting from `groups`: cells take the colour of another group where that lowers the excess over
/// the bounds, groups become one where that hardly raises it, and a cell gets a colour of its own
/// where that lowers it much. Needs the equations' coefficients.
class BoundedCells {
public:
    BoundedCells(const std::array<CellEquations, 3>& equations, CellGroups groups);

    /// Whether the bounds held well enough to begin with; otherwise the groups are as they were.
    bool isOfCells() const { return m_isOfCells; }

    const CellGroups& groups() const { return m_groups; }

    const std::vector<double>& values(std::size_t channel) const {
        return m_channels.at(channel).values();
    }

private:
    struct Pair {
        std::size_t p = 0;
        std::size_t q = 0;
        double cost = 0;
    };

    void fit();
    void changeTo(std::size_t cell, std::size_t group);
    double growth(std::size_t cell, std::size_t group) const;
    double gainAlone(std::size_t cell) const;
    std::vector<Pair> nearPairs() const;
    bool changeCells();
    bool joinGroups();
    bool addGroups();

    const std::array<CellEquations, 3>& m_equations;
    std::array<BoundedChannel, 3> m_channels;
    CellGroups m_groups;
    std::size_t m_count = 0;
    double m_excess = 0;
    bool m_isOfCells = false;
};

}  // namespace pantile::picture
