#include "drawing/pen_path.h"

#include <algorithm>

namespace pantile::drawing {
namespace {

constexpr std::uint32_t kNoCell = ~std::uint32_t{0};

/// Finds shortest ways of the lowered pen.
class PathFinder {
public:
    PathFinder(const std::vector<std::uint8_t>& passable, const PenWays& ways)
        : m_passable(passable), m_ways(ways), m_onward(passable.size(), kNoCell) {}

    /// The cells behind `from` up to `to`. Shape: there is a way.
    std::vector<core::Point> between(core::Point from, core::Point to) {
        searchBackFrom(to, from);
        std::vector<core::Point> path;
        for (core::Point cell = from; cell != to;) {
            cell = cellAt(m_onward[cellOffset(cell, m_ways.grid)]);
            path.push_back(cell);
        }
        for (const core::Point cell : m_queue) m_onward[cellOffset(cell, m_ways.grid)] = kNoCell;
        return path;
    }

private:
    void searchBackFrom(core::Point to, core::Point from) {
        const std::size_t wanted = cellOffset(from, m_ways.grid);
        m_queue.assign(1, to);
        m_onward[cellOffset(to, m_ways.grid)] =
            static_cast<std::uint32_t>(cellOffset(to, m_ways.grid));
        for (std::size_t head = 0; m_onward[wanted] == kNoCell; ++head) {
            const std::size_t here = cellOffset(m_queue[head], m_ways.grid);
            forEachStep(m_queue[head], m_ways, [&](core::Point next) {
                const std::size_t offset = cellOffset(next, m_ways.grid);
                if (m_passable[offset] == 0) return false;
                if (m_onward[offset] != kNoCell) return true;
                m_onward[offset] = static_cast<std::uint32_t>(here);
                m_queue.push_back(next);
                return true;
            });
        }
    }

    core::Point cellAt(std::uint32_t offset) const {
        const auto width = static_cast<std::uint32_t>(m_ways.grid.width);
        return {static_cast<int>(offset % width), static_cast<int>(offset / width)};
    }

    const std::vector<std::uint8_t>& m_passable;
    const PenWays& m_ways;
    std::vector<std::uint32_t> m_onward;  ///< By cell, the next one on the way; kNoCell if unseen.
    std::vector<core::Point> m_queue;
};

int signOfStep(int from, int to) {
    return (to > from) - (to < from);
}

/// Whether the way goes on through `b` as it came: straight on and not back.
bool goesStraightOn(core::Point a, core::Point b, core::Point c) {
    const core::Point before{b.x - a.x, b.y - a.y};
    const core::Point after{c.x - b.x, c.y - b.y};
    const bool sameSigns = signOfStep(a.x, b.x) == signOfStep(b.x, c.x) &&
                           signOfStep(a.y, b.y) == signOfStep(b.y, c.y);
    return sameSigns && before.x * after.y == before.y * after.x;
}

void dragOn(std::vector<core::Point>& path, core::Point to) {
    if (path.back() == to) return;
    const bool goesOn = path.size() > 1 && goesStraightOn(path[path.size() - 2], path.back(), to);
    if (goesOn) path.pop_back();
    path.push_back(to);
}

}  // namespace

std::vector<Stroke> strokesAlong(const std::vector<Node>& order, const Links& links,
                                 core::PaletteIndex colour,
                                 const std::vector<std::uint8_t>& passable, const PenWays& ways) {
    PathFinder finder(passable, ways);
    std::vector<Stroke> strokes;
    Node from = kNoNode;
    for (const Node node : order) {
        const core::Point cell = links.cell(node);
        if (from != kNoNode && links.partner(from) == node) {
            dragOn(strokes.back().path, cell);
        } else if (from != kNoNode && links.staysDown(from, node)) {
            for (const core::Point step : finder.between(links.cell(from), cell)) {
                dragOn(strokes.back().path, step);
            }
        } else {
            strokes.push_back({colour, {cell}});
        }
        from = node;
    }
    return strokes;
}

}  // namespace pantile::drawing
