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
    : LeastTree(Parts::wholeColours(request), ways, mostSteps) {}

LeastTree::LeastTree(const Parts& parts, const PenWays& ways, int mostSteps)
    : m_stepMs(ways.stepMs),
      m_liftMs(ways.liftMs[1]),
      m_mostSteps(std::min(payingSteps(ways, m_liftMs), mostSteps)),
      m_rowLength(static_cast<Place>(ways.grid.width) + 2),
      m_colourAt(m_rowLength * (static_cast<std::size_t>(ways.grid.height) + 2), kUnpainted),
      m_reached(m_colourAt.size(), {kNotReached, 0}),
      m_parents(m_colourAt.size()),
      m_edges(static_cast<std::size_t>(m_mostSteps) + 1) {
    listSteps(ways.aslant);
    listColours(parts);
}

std::array<std::vector<LeastTree::Place>, 256> LeastTree::cellsOf(const Parts& parts) const {
    std::array<std::vector<Place>, 256> cells;
    for (int y = 0; y < parts.grid.height(); ++y) {
        for (int x = 0; x < parts.grid.width(); ++x) {
            if (!parts.isPainted({x, y})) continue;
            const Place place = static_cast<Place>(y + 1) * m_rowLength + static_cast<Place>(x) + 1;
            cells[parts.grid.at(x, y)].push_back(place);
        }
    }
    return cells;
}

void LeastTree::listColours(const Parts& parts) {
    const auto cells = cellsOf(parts);
    for (std::size_t i = 0; i < cells.size(); ++i) {
        if (cells[i].empty()) continue;
        m_colours.push_back(static_cast<core::PaletteIndex>(i));
        for (const Place cell : cells[i]) m_colourAt[cell] = static_cast<std::uint16_t>(i);
    }
    for (const core::PaletteIndex part : m_colours) {
        m_pieces[part] = piecesOf(cells[part]);
        for (const core::PaletteIndex other : m_colours) {
            if (parts.colours[other] == parts.colours[part]) m_alike[part].set(other);
        }
    }
}

LeastTree::Pieces LeastTree::piecesOf(const std::vector<Place>& cells) {
    Pieces pieces;
    for (const Place cell : cells) m_parents[cell] = cell;
    for (const Place cell : cells) {
        for (const Place step : m_steps) {
            if (m_colourAt[cell + step] == m_colourAt[cell]) {
                m_parents[rootOf(cell)] = rootOf(cell + step);
            }
        }
    }
    for (const Place cell : cells) {
        if (rootOf(cell) == cell) pieces.roots.push_back(cell);
    }
    pieces.shores = shoresOf(cells);
    pieces.innerMs = static_cast<std::int64_t>(cells.size() - pieces.roots.size()) *
                     std::min(m_stepMs, m_liftMs);
    return pieces;
}

/// Shape: the pieces of the cells are known.
std::vector<LeastTree::Shore> LeastTree::shoresOf(const std::vector<Place>& cells) {
    std::vector<Shore> shores(256);
    std::vector<Place> touched;
    for (const Place cell : cells) {
        const Place piece = rootOf(cell);
        for (const Place step : m_steps) {
            const Place there = cell + step;
            const std::uint16_t colour = m_colourAt[there];
            if (colour == m_colourAt[cell] || colour == kUnpainted) continue;
            Shore& shore = shores[colour];
            if (m_reached[there].steps == kNotReached) {
                m_reached[there] = {1, piece};
                touched.push_back(there);
                shore.cells.push_back(there);
                shore.pieces.push_back(piece);
            } else if (m_reached[there].piece != piece) {
                shore.joined.push_back(std::minmax(m_reached[there].piece, piece));
            }
        }
    }
    for (const Place cell : touched) m_reached[cell].steps = kNotReached;
    for (std::size_t i = 0; i < shores.size(); ++i) {
        Shore& shore = shores[i];
        shore.colour = static_cast<core::PaletteIndex>(i);
        std::sort(shore.joined.begin(), shore.joined.end());
        const auto last = std::unique(shore.joined.begin(), shore.joined.end());
        shore.joined.erase(last, shore.joined.end());
    }
    std::erase_if(shores, [](const Shore& shore) { return shore.cells.empty(); });
    return shores;
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
    const auto [known, isNew] = m_known[colour].try_emplace(later | m_alike[colour], 0);
    if (isNew) known->second = measured(colour, known->first);
    return known->second;
}

std::int64_t LeastTree::measured(core::PaletteIndex colour, const ColourSet& later) {
    const Pieces& pieces = m_pieces[colour];
    if (pieces.roots.size() < 2) return pieces.innerMs;
    for (std::vector<Edge>& edges : m_edges) edges.clear();
    spread(colour, later);
    for (const Place cell : m_queue) m_reached[cell].steps = kNotReached;
    m_work += static_cast<std::int64_t>(m_queue.size());
    for (const Place root : pieces.roots) m_parents[root] = root;
    return pieces.innerMs + joined(pieces.roots.size());
}

/// The first step of the search, over cells of one other colour.
void LeastTree::leaveShore(const Shore& shore) {
    constexpr std::int32_t kAcross = 2;
    if (kAcross > m_mostSteps) return;
    for (std::size_t i = 0; i < shore.cells.size(); ++i) {
        m_reached[shore.cells[i]] = {1, shore.pieces[i]};
    }
    m_queue.insert(m_queue.end(), shore.cells.begin(), shore.cells.end());
    std::vector<Edge>& edges = m_edges[kAcross];
    edges.insert(edges.end(), shore.joined.begin(), shore.joined.end());
}

/// Breadth first from all pieces of the colour at once. Where two waves meet, there is a way
/// between the pieces that they came from; the one that reached its cell sooner notes it.
void LeastTree::spread(core::PaletteIndex colour, const ColourSet& later) {
    std::array<bool, kUnpainted + 1> passable{};
    for (const core::PaletteIndex other : m_colours) passable[other] = later[other];
    passable[colour] = false;
    m_queue.clear();
    for (const Shore& shore : m_pieces[colour].shores) {
        if (later[shore.colour]) leaveShore(shore);
    }
    for (std::size_t head = 0; head < m_queue.size(); ++head) {
        const Place here = m_queue[head];
        const Reached from = m_reached[here];
        if (2 * from.steps + 1 > m_mostSteps) break;
        const bool goesOn = 2 * from.steps + 2 <= m_mostSteps;
        for (const Place step : m_steps) {
            const Place there = here + step;
            Reached& to = m_reached[there];
            if (to.steps != kNotReached) {
                if (to.piece != from.piece && to.steps >= from.steps) meet(from, to);
            } else if (goesOn && passable[m_colourAt[there]]) {
                to = {from.steps + 1, from.piece};
                m_queue.push_back(there);
            }
        }
    }
}

void LeastTree::meet(Reached from, Reached to) {
    const std::int32_t length = from.steps + to.steps + 1;
    if (length > m_mostSteps) return;
    m_edges[static_cast<std::size_t>(length)].emplace_back(from.piece, to.piece);
}

std::int64_t LeastTree::joined(std::size_t pieces) {
    auto left = static_cast<std::int64_t>(pieces);
    std::int64_t total = 0;
    for (std::size_t length = 1; length < m_edges.size() && left > 1; ++length) {
        for (const Edge& edge : m_edges[length]) {
            const Place a = rootOf(edge.first);
            const Place b = rootOf(edge.second);
            if (a == b) continue;
            m_parents[a] = b;
            total += static_cast<std::int64_t>(length) * m_stepMs;
            --left;
        }
    }
    return total + (left - 1) * m_liftMs;
}

LeastTree::Place LeastTree::rootOf(Place cell) {
    while (m_parents[cell] != cell) {
        m_parents[cell] = m_parents[m_parents[cell]];
        cell = m_parents[cell];
    }
    return cell;
}

}  // namespace pantile::drawing
