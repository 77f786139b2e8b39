#include "drawing/links.h"

#include <tuple>

namespace pantile::drawing {
namespace {

constexpr std::size_t kMostNeighbours = 14;
constexpr std::size_t kMostByPath = 10;  ///< Of those, how many the search along paths gives.
constexpr std::size_t kLeastByRing = 5;  ///< How many are sought by distance alone.
constexpr int kLastRing = 24;

}  // namespace

Links::Links(const Layer& layer, const PenWays& ways, const TimeModel& model)
    : m_liftMs(ways.liftMs),
      m_stepMs(ways.stepMs),
      m_reach(ways.reach),
      m_windowSide(2 * ways.reach + 1),
      m_windowCells(static_cast<std::size_t>(m_windowSide) *
                    static_cast<std::size_t>(m_windowSide)),
      m_grid(ways.grid) {
    for (const StraightRun& run : layer.runs) {
        const Node first = count();
        const bool single = run.from == run.to;
        const std::int64_t ms = model.dragMs(run.from, run.to);
        addNode(run.from, single ? kNoNode : first + 1, ms);
        if (!single) addNode(run.to, first, ms);
    }
    listNodesByCell(ways);
    measure(layer.passable, ways);
}

void Links::addNode(core::Point cell, Node partner, std::int64_t runMs) {
    m_cells.push_back(cell);
    m_partners.push_back(partner);
    m_runMs.push_back(runMs);
}

void Links::listNodesByCell(const PenWays& ways) {
    m_nodeAt.assign(cellCount(ways.grid), kNoNode);
    m_nextAt.assign(m_cells.size(), kNoNode);
    for (Node node = 0; node < count(); ++node) {
        Node& first = m_nodeAt[cellOffset(m_cells[node], m_grid)];
        m_nextAt[node] = first;
        first = node;
    }
}

/// Breadth first from every node, inside its window.
void Links::measure(const std::vector<std::uint8_t>& passable, const PenWays& ways) {
    m_steps.assign(m_cells.size() * m_windowCells, kUnreached);
    WaySearch search(passable, ways);
    std::vector<Neighbour> found;
    m_first.assign(1, 0);
    for (Node node = 0; node < count(); ++node) {
        std::uint8_t* const window = m_steps.data() + node * m_windowCells;
        search.from(m_cells[node]);
        for (const WaySearch::Reached& reached : search.reached()) {
            window[windowOffset(reached.dx, reached.dy)] = reached.steps;
        }
        listNeighbours(node, search.reached(), ways, found);
        m_neighbours.insert(m_neighbours.end(), found.begin(), found.end());
        m_first.push_back(m_neighbours.size());
    }
}

void Links::addNodesAt(core::Point cell, Node from, std::vector<Neighbour>& found) const {
    Node node = m_nodeAt[cellOffset(cell, m_grid)];
    for (; node != kNoNode; node = m_nextAt[node]) {
        if (node == from || node == m_partners[from]) continue;
        found.push_back({node, between(from, node)});
    }
}

void Links::addRing(Node node, int ring, const PenWays& ways, std::vector<Neighbour>& found) const {
    const core::Point centre = m_cells[node];
    for (int y = centre.y - ring; y <= centre.y + ring; ++y) {
        if (y < 0 || y >= ways.grid.height) continue;
        const bool edgeRow = y == centre.y - ring || y == centre.y + ring;
        for (int x = centre.x - ring; x <= centre.x + ring; x += edgeRow ? 1 : 2 * ring) {
            if (x < 0 || x >= ways.grid.width) continue;
            addNodesAt({x, y}, node, found);
        }
    }
}

void Links::listNeighbours(Node node, std::span<const WaySearch::Reached> reached,
                           const PenWays& ways, std::vector<Neighbour>& found) const {
    found.clear();
    const core::Point centre = m_cells[node];
    for (const WaySearch::Reached& there : reached) {
        if (found.size() >= kMostByPath) break;
        addNodesAt({centre.x + there.dx, centre.y + there.dy}, node, found);
    }
    const std::size_t wanted = found.size() + kLeastByRing;
    const int last = std::min(kLastRing, std::max(ways.grid.width, ways.grid.height));
    for (int ring = 1; ring < last && found.size() < wanted; ++ring) {
        addRing(node, ring, ways, found);
    }
    std::sort(found.begin(), found.end(), [](const Neighbour& a, const Neighbour& b) {
        return std::tie(a.ms, a.node) < std::tie(b.ms, b.node);
    });
    const auto same = [](const Neighbour& a, const Neighbour& b) { return a.node == b.node; };
    found.erase(std::unique(found.begin(), found.end(), same), found.end());
    if (found.size() > kMostNeighbours) found.resize(kMostNeighbours);
}

}  // namespace pantile::drawing
