#include "drawing/least_tree.h"

#include <algorithm>

namespace pantile::drawing {
namespace {

constexpr std::int32_t kNotReached = -1;

/// Beyond them a lift is quicker.
std::size_t payingSteps(const PenWays& ways, std::int64_t liftMs) {
    return static_cast<std::size_t>((liftMs - 1) / ways.stepMs);
}

}  // namespace

LeastTree::LeastTree(const DrawingRequest& request, const PenWays& ways, std::size_t mostSteps)
    : m_request(request),
      m_ways(ways),
      m_liftMs(ways.liftMs[1]),
      m_mostSteps(std::min(payingSteps(ways, m_liftMs), mostSteps)),
      m_distance(cellCount(ways.grid), kNotReached),
      m_nearest(m_distance.size()),
      m_parents(m_distance.size()),
      m_edges(m_mostSteps + 1) {
    for (int y = 0; y < ways.grid.height; ++y) {
        for (int x = 0; x < ways.grid.width; ++x) {
            if (request.isPainted({x, y})) m_cells[request.grid.at(x, y)].push_back({x, y});
        }
    }
    for (std::size_t i = 0; i < m_cells.size(); ++i) {
        if (!m_cells[i].empty()) m_colours.push_back(static_cast<core::PaletteIndex>(i));
    }
}

std::int64_t LeastTree::milliseconds(core::PaletteIndex colour, const ColourSet& later) {
    const auto [known, isNew] = m_known[colour].try_emplace(later, 0);
    if (isNew) known->second = measured(colour, later);
    return known->second;
}

std::int64_t LeastTree::measured(core::PaletteIndex colour, const ColourSet& later) {
    for (std::vector<Edge>& edges : m_edges) edges.clear();
    spread(colour, later);
    for (const core::Point cell : m_queue) {
        m_distance[cellOffset(cell, m_ways.grid)] = kNotReached;
    }
    m_work += static_cast<std::int64_t>(m_queue.size());
    return joined(m_cells[colour].size());
}

/// Breadth first from all cells of the colour at once. Where two waves meet, there is a way between
/// the cells that they came from.
void LeastTree::spread(core::PaletteIndex colour, const ColourSet& later) {
    m_queue = m_cells[colour];
    for (const core::Point cell : m_queue) {
        const std::size_t offset = cellOffset(cell, m_ways.grid);
        m_distance[offset] = 0;
        m_nearest[offset] = m_parents[offset] = static_cast<std::uint32_t>(offset);
    }
    for (std::size_t head = 0; head < m_queue.size(); ++head) {
        const std::size_t from = cellOffset(m_queue[head], m_ways.grid);
        const auto steps = static_cast<std::size_t>(m_distance[from]);
        forEachNeighbour(m_queue[head], m_ways, [&](core::Point next) {
            if (!m_request.isPainted(next)) return;
            const core::PaletteIndex there = m_request.grid.at(next);
            if (there != colour && !later[there]) return;
            const std::size_t to = cellOffset(next, m_ways.grid);
            if (m_distance[to] == kNotReached) {
                if (2 * steps + 2 > m_mostSteps) return;
                m_distance[to] = m_distance[from] + 1;
                m_nearest[to] = m_nearest[from];
                m_queue.push_back(next);
            } else if (m_nearest[to] != m_nearest[from]) {
                const std::size_t length = steps + static_cast<std::size_t>(m_distance[to]) + 1;
                if (length <= m_mostSteps) {
                    m_edges[length].push_back({m_nearest[from], m_nearest[to]});
                }
            }
        });
    }
}

std::int64_t LeastTree::joined(std::size_t cells) {
    auto pieces = static_cast<std::int64_t>(cells);
    std::int64_t total = 0;
    for (std::size_t length = 1; length < m_edges.size(); ++length) {
        for (const Edge& edge : m_edges[length]) {
            const std::uint32_t a = rootOf(edge.a);
            const std::uint32_t b = rootOf(edge.b);
            if (a == b) continue;
            m_parents[a] = b;
            total += static_cast<std::int64_t>(length) * m_ways.stepMs;
            --pieces;
        }
    }
    return total + (pieces - 1) * m_liftMs;
}

std::uint32_t LeastTree::rootOf(std::uint32_t cell) {
    while (m_parents[cell] != cell) {
        m_parents[cell] = m_parents[m_parents[cell]];
        cell = m_parents[cell];
    }
    return cell;
}

}  // namespace pantile::drawing
