#include "drawing/least_tree.h"

#include <algorithm>

namespace pantile::drawing {
namespace {

constexpr std::int32_t kNotReached = -1;
constexpr std::uint16_t kUnpainted = 256;

/// Beyond them a lift is quicker.
std::int32_t payingSteps(const PenWays& ways, std::int64_t liftMs) {
    return static_cast<std::int32_t>((liftMs - 1) / ways.stepMs);
}

}  // namespace

LeastTree::LeastTree(const DrawingRequest& request, const PenWays& ways, int mostSteps)
    : m_stepMs(ways.stepMs),
      m_liftMs(ways.liftMs[1]),
      m_mostSteps(std::min(payingSteps(ways, m_liftMs), mostSteps)),
      m_rowLength(static_cast<Place>(ways.grid.width) + 2),
      m_colourAt(m_rowLength * (static_cast<std::size_t>(ways.grid.height) + 2), kUnpainted),
      m_distance(m_colourAt.size(), kNotReached),
      m_nearest(m_colourAt.size()),
      m_parents(m_colourAt.size()),
      m_edges(static_cast<std::size_t>(m_mostSteps) + 1) {
    listCells(request);
    listSteps(ways.aslant);
}

void LeastTree::listCells(const DrawingRequest& request) {
    for (int y = 0; y < request.grid.height(); ++y) {
        for (int x = 0; x < request.grid.width(); ++x) {
            if (!request.isPainted({x, y})) continue;
            const Place place = static_cast<Place>(y + 1) * m_rowLength + static_cast<Place>(x) + 1;
            m_colourAt[place] = request.grid.at(x, y);
            m_cells[request.grid.at(x, y)].push_back(place);
        }
    }
    for (std::size_t i = 0; i < m_cells.size(); ++i) {
        if (!m_cells[i].empty()) m_colours.push_back(static_cast<core::PaletteIndex>(i));
    }
}

/// Steps back are what wraps around to them.
void LeastTree::listSteps(bool aslant) {
    m_steps = {1, m_rowLength, Place{0} - 1, Place{0} - m_rowLength};
    if (!aslant) return;
    for (const Place step : {m_rowLength + 1, m_rowLength - 1}) {
        m_steps.push_back(step);
        m_steps.push_back(Place{0} - step);
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
    for (const Place cell : m_queue) m_distance[cell] = kNotReached;
    m_work += static_cast<std::int64_t>(m_queue.size());
    return joined(m_cells[colour].size());
}

/// Breadth first from all cells of the colour at once. Where two waves meet, there is a way between
/// the cells that they came from.
void LeastTree::spread(core::PaletteIndex colour, const ColourSet& later) {
    std::array<bool, kUnpainted + 1> passable{};
    for (const core::PaletteIndex other : m_colours) passable[other] = later[other];
    passable[colour] = true;
    m_queue = m_cells[colour];
    for (const Place cell : m_queue) {
        m_distance[cell] = 0;
        m_nearest[cell] = m_parents[cell] = cell;
    }
    for (std::size_t head = 0; head < m_queue.size(); ++head) {
        const Place from = m_queue[head];
        const bool goesOn = 2 * m_distance[from] + 2 <= m_mostSteps;
        for (const Place step : m_steps) {
            const Place to = from + step;
            if (!passable[m_colourAt[to]]) continue;
            if (m_distance[to] != kNotReached) {
                meet(from, to);
            } else if (goesOn) {
                m_distance[to] = m_distance[from] + 1;
                m_nearest[to] = m_nearest[from];
                m_queue.push_back(to);
            }
        }
    }
}

/// Notes the way once, when the search stands at the end that it comes to later.
void LeastTree::meet(Place from, Place to) {
    if (m_nearest[to] == m_nearest[from]) return;
    if (m_distance[to] > m_distance[from]) return;
    if (m_distance[to] == m_distance[from] && to > from) return;
    const std::int32_t length = m_distance[from] + m_distance[to] + 1;
    if (length > m_mostSteps) return;
    m_edges[static_cast<std::size_t>(length)].push_back({m_nearest[from], m_nearest[to]});
}

std::int64_t LeastTree::joined(std::size_t cells) {
    auto pieces = static_cast<std::int64_t>(cells);
    std::int64_t total = 0;
    for (std::size_t length = 1; length < m_edges.size(); ++length) {
        for (const Edge& edge : m_edges[length]) {
            const Place a = rootOf(edge.a);
            const Place b = rootOf(edge.b);
            if (a == b) continue;
            m_parents[a] = b;
            total += static_cast<std::int64_t>(length) * m_stepMs;
            --pieces;
        }
    }
    return total + (pieces - 1) * m_liftMs;
}

LeastTree::Place LeastTree::rootOf(Place cell) {
    while (m_parents[cell] != cell) {
        m_parents[cell] = m_parents[m_parents[cell]];
        cell = m_parents[cell];
    }
    return cell;
}

}  // namespace pantile::drawing
