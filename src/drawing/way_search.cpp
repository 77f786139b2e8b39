#include "drawing/way_search.h"

#include <cstdlib>

namespace pantile::drawing {
namespace {

constexpr std::uint8_t kBlocked = 254;
constexpr std::uint8_t kUnseen = 255;
static_assert(PenWays::kMostDepth < kBlocked && PenWays::kMostReach < 127);

}  // namespace

WaySearch::WaySearch(const std::vector<std::uint8_t>& passable, const PenWays& ways)
    : m_depth(ways.depth),
      m_reach(ways.reach),
      m_stride(ways.stride),
      m_rowLength(ways.grid.width + 2),
      m_steps(
          static_cast<std::size_t>(m_rowLength) * static_cast<std::size_t>(ways.grid.height + 2),
          kBlocked) {
    std::size_t cell = 0;
    for (int y = 0; y < ways.grid.height; ++y) {
        auto place = static_cast<std::size_t>((y + 1) * m_rowLength + 1);
        for (int x = 0; x < ways.grid.width; ++x, ++cell, ++place) {
            if (passable[cell] != 0) m_steps[place] = kUnseen;
        }
    }
    for (int dy = -1; dy <= 1; ++dy) {
        for (int dx = -1; dx <= 1; ++dx) {
            if ((dx == 0 && dy == 0) || (dx != 0 && dy != 0 && !ways.aslant)) continue;
            m_stepsAround.push_back({dy * m_rowLength + dx, static_cast<std::int8_t>(dx),
                                     static_cast<std::int8_t>(dy)});
        }
    }
}

void WaySearch::from(core::Point start) {
    for (const Reached& seen : m_reached) m_steps[seen.place] = kUnseen;
    const std::int32_t place = (start.y + 1) * m_rowLength + start.x + 1;
    m_reached.assign(1, {static_cast<std::uint32_t>(place), 0, 0, 0});
    m_steps[m_reached[0].place] = 0;
    for (std::size_t head = 0; head < m_reached.size(); ++head) {
        const Reached here = m_reached[head];
        if (here.steps >= m_depth) break;
        for (const Step& step : m_stepsAround) goOnFrom(here, step);
    }
}

/// As far along the line as one step may go.
void WaySearch::goOnFrom(const Reached& here, const Step& step) {
    const auto steps = static_cast<std::uint8_t>(here.steps + 1);
    std::int32_t place = static_cast<std::int32_t>(here.place);
    int dx = here.dx;
    int dy = here.dy;
    for (int i = 0; i < m_stride; ++i) {
        place += step.place;
        dx += step.dx;
        dy += step.dy;
        std::uint8_t& there = m_steps[static_cast<std::size_t>(place)];
        // What was reached sooner leads on by itself.
        if (there != kUnseen && there != steps) return;
        if (there == steps) continue;
        if (std::abs(dx) > m_reach || std::abs(dy) > m_reach) return;
        there = steps;
        m_reached.push_back({static_cast<std::uint32_t>(place), static_cast<std::int8_t>(dx),
                             static_cast<std::int8_t>(dy), steps});
    }
}

}  // namespace pantile::drawing
