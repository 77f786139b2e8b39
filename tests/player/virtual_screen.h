#pragma once

// The toolkit's side of a drawing, written from what such toolkits do with a mouse and not from the
// planner or from src/drawing/replay: a pointer on a screen that ends at its edges, a grid, a
// palette bar, and a toolkit that overlooks what comes too fast. It takes whatever comes, as a
// toolkit does; what is wrong shows in the cells or is noted as a fault.

#include <algorithm>
#include <cstdint>
#include <cstdlib>
#include <optional>
#include <string>
#include <vector>

namespace pantile::tests {

enum class ScreenPen { WholeCells, Diagonals, Lines, Sampled };

/// Units: counts and milliseconds. The first cell's and swatch's left top corner, not their centre.
struct ScreenSetup {
    int width = 1920;
    int height = 1080;
    int columns = 0;
    int rows = 0;
    int gridLeft = 0;
    int gridTop = 0;
    int cellSide = 0;
    int barLeft = 0;
    int barTop = 0;
    int swatchSide = 0;
    int swatchesPerColumn = 1;
    int colours = 0;
    ScreenPen pen = ScreenPen::WholeCells;
    int leastPressMs = 0;    ///< The button has to be down so long, and still, to be noticed.
    int leastReleaseMs = 0;  ///< The same for up; until then the pen still paints.
    int leastSettleMs = 0;   ///< After a pick nothing is noticed for so long.
    int leastGapMs = 0;      ///< A move sooner after the last one is dropped.
    int longestStepUp = 127;
    int longestStepDown = 127;  ///< What goes beyond these on an axis is dropped.
};

/// What came out of a mouse, and when.
struct SeenReport {
    std::int64_t at = 0;  ///< Milliseconds.
    int buttons = 0;
    int dx = 0;
    int dy = 0;
    bool operator==(const SeenReport&) const = default;
};

class VirtualScreen {
public:
    VirtualScreen(const ScreenSetup& setup, int pointerX, int pointerY)
        : m_setup(setup),
          m_x(pointerX),
          m_y(pointerY),
          m_cells(static_cast<std::size_t>(setup.columns * setup.rows), -1) {}

    void take(const SeenReport& report) {
        notice(report.at);
        if (report.buttons != 0 && report.buttons != 1) fault(report, "another button");
        if (report.dx < -127 || report.dy < -127) fault(report, "a move outside the protocol");
        if (report.dx != 0 || report.dy != 0) move(report);
        const bool down = (report.buttons & 1) != 0;
        if (down == m_down) return;
        m_down = down;
        m_changedAt = report.at;
        m_disturbed = down && report.at < m_deafUntil;
    }

    /// Lets time go by after the last report.
    void wait(std::int64_t until) { notice(until); }

    /// The colour of each cell row by row, -1 where nothing was painted.
    const std::vector<int>& cells() const { return m_cells; }

    /// What no drawing may do: clicks elsewhere, moves dropped, the pointer off canvas and bar.
    const std::vector<std::string>& faults() const { return m_faults; }

    bool buttonDown() const { return m_down; }

private:
    void fault(const SeenReport& report, const std::string& what) {
        m_faults.push_back(std::to_string(report.at) + " ms, pointer at " + std::to_string(m_x) +
                           "," + std::to_string(m_y) + ": " + what);
    }

    // The toolkit takes note of the button once it has been still for long enough.
    void notice(std::int64_t now) {
        if (m_down == m_noticedDown || m_disturbed) return;
        const int needed = m_down ? m_setup.leastPressMs : m_setup.leastReleaseMs;
        if (now < m_changedAt + needed) return;
        m_noticedDown = m_down;
        if (m_down) {
            press();
        } else {
            if (m_onSwatch) m_deafUntil = m_changedAt + needed + m_setup.leastSettleMs;
            m_painting = false;
            m_onSwatch = false;
        }
    }

    void press() {
        if (const auto cell = cellAt(m_x, m_y)) {
            m_painting = true;
            paint(*cell);
        } else if (const auto colour = swatchAt(m_x, m_y)) {
            m_onSwatch = true;
            m_colour = *colour;
        } else {
            fault({m_changedAt, 1, 0, 0}, "a click beside grid and bar");
        }
    }

    void move(const SeenReport& report) {
        const bool tooSoon = m_movedAt && report.at < *m_movedAt + m_setup.leastGapMs;
        m_movedAt = report.at;
        if (m_down && !m_noticedDown) m_disturbed = true;
        if (tooSoon || report.at < m_deafUntil) {
            fault(report, "a move that the toolkit drops");
            return;
        }
        const int most = m_noticedDown ? m_setup.longestStepDown : m_setup.longestStepUp;
        const int dx = std::clamp(report.dx, -most, most);
        const int dy = std::clamp(report.dy, -most, most);
        if (dx != report.dx || dy != report.dy) fault(report, "a move too far for one report");
        const int fromX = m_x;
        const int fromY = m_y;
        m_x = std::clamp(m_x + dx, 0, m_setup.width - 1);
        m_y = std::clamp(m_y + dy, 0, m_setup.height - 1);
        m_cornered = m_cornered || (m_x == 0 && m_y == 0);
        m_arrived = m_arrived || (m_cornered && cellAt(m_x, m_y));
        if (m_arrived && !insideCanvasAndBar()) fault(report, "the pointer off canvas and bar");
        if (m_onSwatch) fault(report, "a drag on the palette bar");
        if (m_painting) drag(fromX, fromY);
    }

    bool insideCanvasAndBar() const {
        const int barRows = std::min(m_setup.swatchesPerColumn, m_setup.colours);
        const int barColumns =
            (m_setup.colours + m_setup.swatchesPerColumn - 1) / m_setup.swatchesPerColumn;
        const int left = std::min(m_setup.gridLeft, m_setup.barLeft);
        const int top = std::min(m_setup.gridTop, m_setup.barTop);
        const int right = std::max(m_setup.gridLeft + m_setup.columns * m_setup.cellSide,
                                   m_setup.barLeft + barColumns * m_setup.swatchSide);
        const int bottom = std::max(m_setup.gridTop + m_setup.rows * m_setup.cellSide,
                                    m_setup.barTop + barRows * m_setup.swatchSide);
        return m_x >= left && m_y >= top && m_x < right && m_y < bottom;
    }

    void drag(int fromX, int fromY) {
        const auto from = cellAt(fromX, fromY);
        const auto to = cellAt(m_x, m_y);
        if (!to) return;
        const int across = from ? to->column - from->column : 0;
        const int down = from ? to->row - from->row : 0;
        const bool neighbour = std::abs(across) <= 1 && std::abs(down) <= 1;
        const bool samples =
            m_setup.pen == ScreenPen::Sampled ||
            (m_setup.pen == ScreenPen::Diagonals && neighbour) ||
            // It sees one cell after the other, and what a jump goes over it does not see.
            (m_setup.pen != ScreenPen::Lines && std::abs(across) + std::abs(down) > 2);
        if (!from || samples) {
            paint(*to);
            return;
        }
        // First along the row, then along the column: a slanting move paints its corner too.
        Cell cell = *from;
        while (cell.column != to->column) {
            cell.column += across > 0 ? 1 : -1;
            paint(cell);
        }
        while (cell.row != to->row) {
            cell.row += down > 0 ? 1 : -1;
            paint(cell);
        }
    }

    struct Cell {
        int column = 0;
        int row = 0;
    };

    static int squaresFrom(int edge, int place, int side) {
        return place < edge ? -1 : (place - edge) / side;
    }

    std::optional<Cell> cellAt(int x, int y) const {
        const Cell cell{squaresFrom(m_setup.gridLeft, x, m_setup.cellSide),
                        squaresFrom(m_setup.gridTop, y, m_setup.cellSide)};
        if (cell.column < 0 || cell.row < 0 || cell.column >= m_setup.columns ||
            cell.row >= m_setup.rows) {
            return std::nullopt;
        }
        return cell;
    }

    std::optional<int> swatchAt(int x, int y) const {
        const int column = squaresFrom(m_setup.barLeft, x, m_setup.swatchSide);
        const int row = squaresFrom(m_setup.barTop, y, m_setup.swatchSide);
        if (column < 0 || row < 0 || row >= m_setup.swatchesPerColumn) return std::nullopt;
        const int colour = column * m_setup.swatchesPerColumn + row;
        if (colour >= m_setup.colours) return std::nullopt;
        return colour;
    }

    void paint(Cell cell) {
        m_cells[static_cast<std::size_t>(cell.row * m_setup.columns + cell.column)] = m_colour;
    }

    ScreenSetup m_setup;
    int m_x;
    int m_y;
    std::vector<int> m_cells;
    std::vector<std::string> m_faults;
    int m_colour = -1;
    bool m_cornered = false;  ///< The pointer has been in the screen's corner,
    bool m_arrived = false;   ///< and after that on the grid.
    bool m_down = false;
    bool m_noticedDown = false;
    bool m_disturbed = false;  ///< A press that moved too soon, or came too soon, is never noticed.
    bool m_painting = false;
    bool m_onSwatch = false;
    std::int64_t m_changedAt = 0;
    std::int64_t m_deafUntil = 0;
    std::optional<std::int64_t> m_movedAt;
};

}  // namespace pantile::tests
