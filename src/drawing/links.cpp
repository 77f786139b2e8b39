#include "drawing/links.h"

#include <tuple>

namespace pantile::drawing {
namespace {

constexpr std::size_t kMostNeighbours = 14;
constexpr std::size_t kMostByPath = 10;  ///< Of those, how many the search along paths gives.
constexpr std::size_t kLeastByRing = 5;  ///< How many are sought by distance alone.
constexpr int kLastRing = 24;
constexpr int kUnseen = -1;

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
    std::vector<int> distance(passable.size(), kUnseen);
    std::vector<core::Point> queue;
    std::vector<std::size_t> reached;
    std::vector<Neighbour> found;
    m_first.assign(1, 0);
    for (Node node = 0; node < count(); ++node) {
        const core::Point centre = m_cells[node];
        std::uint8_t* const window = m_steps.data() + node * m_windowCells;
        queue.assign(1, centre);
        reached.assign(1, cellOffset(centre, m_grid));
        distance[reached[0]] = 0;
        window[windowOffset(0, 0)] = 0;
        for (std::size_t head = 0; head < queue.size(); ++head) {
            const int steps = distance[reached[head]] + 1;
            if (steps > ways.depth) break;
            forEachStep(queue[head], ways, [&](core::Point next) {
                const std::size_t offset = cellOffset(next, m_grid);
                const int dx = next.x - centre.x;
                const int dy = next.y - centre.y;
                const bool inWindow = std::abs(dx) <= m_reach && std::abs(dy) <= m_reach;
                if (!inWindow || passable[offset] == 0) return false;
                // What was reached sooner leads on by itself.
                if (distance[offset] != kUnseen) return distance[offset] == steps;
                distance[offset] = steps;
                queue.push_back(next);
                reached.push_back(offset);
                window[windowOffset(dx, dy)] = static_cast<std::uint8_t>(steps);
                return true;
            });
        }
        listNeighbours(node, reached, ways, found);
        m_neighbours.insert(m_neighbours.end(), found.begin(), found.end());
        m_first.push_back(m_neighbours.size());
        for (const std::size_t offset : reached) distance[offset] = kUnseen;
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

void Links::listNeighbours(Node node, std::span<const std::size_t> reached, const PenWays& ways,
                           std::vector<Neighbour>& found) const {
    found.clear();
    for (const std::size_t offset : reached) {
        if (found.size() >= kMostByPath) break;
        const auto width = static_cast<std::size_t>(m_grid.width);
        addNodesAt({static_cast<int>(offset % width), static_cast<int>(offset / width)}, node,
                   found);
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
