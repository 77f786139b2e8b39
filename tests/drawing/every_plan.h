#pragma once

// The quickest of all plans of a tiny texture, whatever they do: a search over every state that a
// toolkit can be in.

#include <cstdint>
#include <limits>
#include <vector>

#include <queue>

#include "drawing/request.h"
#include "drawing/timing.h"

namespace pantile::tests {

/// Shape: at most 12 cells, whole cells or diagonals, a cell a report with the pen down.
class EveryPlan {
public:
    explicit EveryPlan(const drawing::DrawingRequest& request)
        : m_request(request),
          m_model(request.canvas, request.timing),
          m_width(request.grid.width()),
          m_cells(request.grid.width() * request.grid.height()) {
        for (int cell = 0; cell < m_cells; ++cell) {
            if (!request.isPainted(at(cell))) continue;
            m_wanted |= 1U << cell;
            addColour(request.grid.at(at(cell)));
        }
        m_places = m_cells + static_cast<int>(m_colours.size()) + 1;
    }

    /// Dijkstra's search from an untouched canvas to one where every cell is right.
    std::int64_t quickestMs() {
        m_best.assign(states(), std::numeric_limits<std::int64_t>::max());
        reach({0, m_places - 1, kNoColour, false}, 0);
        while (!m_queue.empty()) {
            const auto [ms, number] = m_queue.top();
            m_queue.pop();
            if (ms > m_best[number]) continue;
            const State state = m_stateOf[number];
            if (state.right == m_wanted && !state.down) return ms;
            leave(state, ms);
        }
        return -1;
    }

private:
    static constexpr int kNoColour = 0;  ///< Colours held are counted from 1.

    /// What is still to do depends on which cells show their colour, not on what others show.
    struct State {
        unsigned right = 0;
        int place = 0;  ///< A cell, then a swatch, then the start.
        int held = kNoColour;
        bool down = false;
    };

    core::Point at(int cell) const { return {cell % m_width, cell / m_width}; }

    void addColour(core::PaletteIndex colour) {
        for (const core::PaletteIndex known : m_colours) {
            if (known == colour) return;
        }
        m_colours.push_back(colour);
    }

    std::size_t states() const {
        return (std::size_t{1} << m_cells) * static_cast<std::size_t>(m_places) *
               (m_colours.size() + 1) * 2;
    }

    std::size_t numberOf(const State& state) const {
        std::size_t number = state.right * static_cast<std::size_t>(m_places);
        number = (number + static_cast<std::size_t>(state.place)) * (m_colours.size() + 1);
        return (number + static_cast<std::size_t>(state.held)) * 2 + (state.down ? 1 : 0);
    }

    core::Point countsOf(int place) const {
        if (place < m_cells) return m_model.cellCentre(at(place));
        if (place == m_places - 1) return m_model.start();
        return m_model.swatch(m_colours[static_cast<std::size_t>(place - m_cells)]);
    }

    void reach(const State& state, std::int64_t ms) {
        const std::size_t number = numberOf(state);
        if (m_stateOf.empty()) m_stateOf.resize(states());
        if (ms >= m_best[number]) return;
        m_best[number] = ms;
        m_stateOf[number] = state;
        m_queue.push({ms, number});
    }

    bool mayTouch(int cell) const { return (m_wanted >> cell & 1U) != 0; }

    unsigned painted(const State& state, int cell) const {
        const bool isRight =
            m_request.grid.at(at(cell)) == m_colours[static_cast<std::size_t>(state.held - 1)];
        const unsigned bit = 1U << cell;
        return isRight ? state.right | bit : state.right & ~bit;
    }

    void leave(const State& state, std::int64_t ms) {
        if (state.down) {
            dragOn(state, ms);
            reach({state.right, state.place, state.held, false}, ms + m_request.timing.releaseMs);
            return;
        }
        for (std::size_t colour = 0; colour < m_colours.size(); ++colour) {
            const int place = m_cells + static_cast<int>(colour);
            reach({state.right, place, static_cast<int>(colour) + 1, false},
                  ms + m_model.pickMs(countsOf(state.place), m_colours[colour]));
        }
        if (state.held == kNoColour) return;
        for (int cell = 0; cell < m_cells; ++cell) {
            if (!mayTouch(cell)) continue;
            const std::int64_t way = m_model.travelMs(countsOf(state.place), countsOf(cell));
            reach({painted(state, cell), cell, state.held, true},
                  ms + way + m_request.timing.pressMs);
        }
    }

    void dragOn(const State& state, std::int64_t ms) {
        const bool aslant = m_request.canvas.penModel == core::PenModel::Diagonals;
        for (int cell = 0; cell < m_cells; ++cell) {
            const int dx = std::abs(at(cell).x - at(state.place).x);
            const int dy = std::abs(at(cell).y - at(state.place).y);
            const bool isNext = dx <= 1 && dy <= 1 && (aslant ? dx + dy > 0 : dx + dy == 1);
            if (!isNext || !mayTouch(cell)) continue;
            reach({painted(state, cell), cell, state.held, true},
                  ms + m_request.timing.reportIntervalMs);
        }
    }

    using Entry = std::pair<std::int64_t, std::size_t>;

    const drawing::DrawingRequest& m_request;
    drawing::TimeModel m_model;
    int m_width;
    int m_cells;
    int m_places = 0;
    unsigned m_wanted = 0;
    std::vector<core::PaletteIndex> m_colours;
    std::vector<std::int64_t> m_best;
    std::vector<State> m_stateOf;
    std::priority_queue<Entry, std::vector<Entry>, std::greater<>> m_queue;
};

}  // namespace pantile::tests
