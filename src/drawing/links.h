#pragma once

// Links: the least time from each end of a layer's runs to each other one, with the pen down inside
// the passable cells or lifted. Authority: docs/drawing.md section 5.

#include <algorithm>
#include <cstdint>
#include <cstdlib>
#include <span>
#include <utility>
#include <vector>

#include "drawing/layer.h"
#include "drawing/pen_ways.h"
#include "drawing/timing.h"
#include "drawing/way_search.h"

namespace pantile::drawing {

/// An end of a run; a run of one cell has one.
using Node = std::uint32_t;
inline constexpr Node kNoNode = ~Node{0};

/// Units: milliseconds. A way is as long back as forth: what the search from the lesser node found
/// counts for both.
/// Cost: a search of the neighbourhood for each node.
class Links {
public:
    /// What a link counts that must be in the tour: the run between its own two ends. Larger than
    /// any sum of other links, so that leaving it out never pays.
    static constexpr std::int64_t kForced = std::int64_t{1} << 40;

    struct Neighbour {
        Node node;
        std::int64_t ms;
    };

    Links(const Layer& layer, const PenWays& ways, const TimeModel& model);

    Node count() const { return static_cast<Node>(m_cells.size()); }

    core::Point cell(Node node) const { return m_cells[node]; }

    /// The other end of the node's run; kNoNode for a single cell.
    Node partner(Node node) const { return m_partners[node]; }

    /// The nearest other nodes, nearest first; never the partner.
    std::span<const Neighbour> neighbours(Node node) const {
        return std::span(m_neighbours).subspan(m_first[node], m_first[node + 1] - m_first[node]);
    }

    std::int64_t between(Node a, Node b) const {
        if (m_partners[a] == b) return m_runMs[a] - kForced;
        if (a > b) std::swap(a, b);
        const int dx = m_cells[b].x - m_cells[a].x;
        const int dy = m_cells[b].y - m_cells[a].y;
        const int side = std::max(std::abs(dx), std::abs(dy));
        const std::int64_t lifted = m_liftMs[static_cast<std::size_t>(side)];
        if (side > m_reach) return lifted;
        const std::uint8_t steps = m_steps[a * m_windowCells + windowOffset(dx, dy)];
        return steps == kUnreached ? lifted : std::min(lifted, steps * m_stepMs);
    }

    /// Whether the pen stays down on the way between two nodes.
    bool staysDown(Node a, Node b) const {
        const core::Point from = m_cells[a];
        return between(a, b) < m_liftMs[static_cast<std::size_t>(longerSide(from, m_cells[b]))];
    }

private:
    static constexpr std::uint8_t kUnreached = 255;

    std::size_t windowOffset(int dx, int dy) const {
        const int offset = (dy + m_reach) * m_windowSide + dx + m_reach;
        return static_cast<std::size_t>(offset);
    }

    void addNode(core::Point cell, Node partner, std::int64_t runMs);
    void listNodesByCell(const PenWays& ways);
    void measure(const std::vector<std::uint8_t>& passable, const PenWays& ways);
    void listNeighbours(Node node, std::span<const WaySearch::Reached> reached, const PenWays& ways,
                        std::vector<Neighbour>& found) const;
    void addRing(Node node, int ring, const PenWays& ways, std::vector<Neighbour>& found) const;
    void addNodesAt(core::Point cell, Node from, std::vector<Neighbour>& found) const;

    std::vector<core::Point> m_cells;
    std::vector<Node> m_partners;
    std::vector<std::int64_t> m_runMs;
    std::vector<std::int64_t> m_liftMs;
    std::int64_t m_stepMs;
    int m_reach;
    int m_windowSide;
    std::size_t m_windowCells;
    std::vector<std::uint8_t> m_steps;  ///< For each node a window of steps to the cells around it.
    std::vector<Neighbour> m_neighbours;
    std::vector<std::size_t> m_first;  ///< Where each node's neighbours begin.
    std::vector<Node> m_nodeAt;        ///< By cell, the first node there.
    std::vector<Node> m_nextAt;        ///< By node, the next one at its cell.
    core::Size m_grid;
};

}  // namespace pantile::drawing
