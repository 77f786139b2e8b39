#pragma once

// WaySearch: which cells the lowered pen comes to from a cell, and in how many steps.

#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

#include "drawing/pen_ways.h"

namespace pantile::drawing {

class WaySearch {
public:
    /// A cell by what lies between it and where the search began.
    struct Reached {
        std::uint32_t place;  ///< Of the search's own.
        std::int8_t dx;
        std::int8_t dy;
        std::uint8_t steps;
    };

    /// Shape: `passable` has an entry for each cell of the grid, row by row.
    WaySearch(const std::vector<std::uint8_t>& passable, const PenWays& ways);

    /// Seeks from `start`, as far as the ways' depth and reach go.
    void from(core::Point start);

    /// What the last search came to, nearest first; the start is the first of them.
    std::span<const Reached> reached() const { return m_reached; }

private:
    /// What one step changes. Places stand row by row with a border around the grid.
    struct Step {
        std::int32_t place;
        std::int8_t dx;
        std::int8_t dy;
    };

    void goOnFrom(const Reached& here, const Step& step);

    int m_depth;
    int m_reach;
    int m_stride;
    std::int32_t m_rowLength;
    std::vector<Step> m_stepsAround;
    std::vector<std::uint8_t> m_steps;  ///< By place: how many, or that it is blocked or unseen.
    std::vector<Reached> m_reached;
};

}  // namespace pantile::drawing
