// Nothing of the planner, the time model or the report maker is used here: a fault in their
// geometry must not hide itself.

#include "drawing/replay.h"

#include <algorithm>
#include <cstdlib>
#include <string>
#include <utility>

#include "core/grid.h"
#include "drawing/film.h"

namespace pantile::drawing {
namespace {

using core::Error;
using core::ErrorKind;
using core::PenModel;
using core::Point;

constexpr int kLargestReportMove = 127;

/// Which of the squares of side `pitch`, the first centred at `centre`, holds `place`; negative
/// before the first.
int squareAt(int place, int centre, int pitch) {
    const int fromEdge = place - (centre - pitch / 2);
    return fromEdge < 0 ? -1 : fromEdge / pitch;
}

int signOf(int value) {
    return (value > 0) - (value < 0);
}

class Toolkit {
public:
    /// `film`, if there is one, gets every instant and must outlive it.
    Toolkit(const core::Canvas& canvas, const core::PointerTiming& timing, Film* film = nullptr)
        : m_canvas(canvas),
          m_timing(timing),
          m_rules(canvas.rules),
          m_film(film),
          m_pen(canvas.geometry.gridCentre) {
        m_shown.cells.resize(static_cast<std::size_t>(canvas.size.width) *
                             static_cast<std::size_t>(canvas.size.height));
    }

    core::Result<void> take(const Report& report) {
        const bool moves = report.dx != 0 || report.dy != 0;
        const bool edge = report.pressed != m_pressed;
        if (moves && edge) return fault("moves and changes the button at once");
        if ((moves || edge) && m_shown.milliseconds < m_stillUntil) {
            return fault("comes " + std::to_string(m_stillUntil - m_shown.milliseconds) +
                         " ms too soon after the button changed");
        }
        if (moves) PANTILE_RETURN_IF_ERROR(move(report));
        if (edge) PANTILE_RETURN_IF_ERROR(report.pressed ? press() : release());
        if (m_coveredAnother && !m_rules.covers) return fault("paints over another colour");
        if (m_film != nullptr) {
            m_film->instants.push_back(
                {m_shown.milliseconds, m_pen, m_pressed, m_colour, m_film->changes.size()});
        }
        m_shown.milliseconds += report.milliseconds;
        ++m_number;
        return {};
    }

    core::Result<Replayed> finish() && {
        if (m_pressed) return fault("is missing: the button is still down");
        if (m_shown.milliseconds < m_stillUntil) {
            return fault("is missing: the last release was not held long enough");
        }
        return std::move(m_shown);
    }

private:
    enum class Place { Grid, Swatch, FillButton };

    /// A cell's place among all, and what it showed before.
    using Change = std::pair<std::size_t, std::optional<core::PaletteIndex>>;

    Error fault(const std::string& what) const {
        return Error{ErrorKind::InvalidInput, "report " + std::to_string(m_number) + " " + what,
                     "plan the drawing again; these reports would not draw the texture"};
    }

    core::Result<void> move(const Report& report) {
        const Point step{report.dx, report.dy};
        const int longest = std::max(std::abs(step.x), std::abs(step.y));
        const int allowed = m_pressed ? m_timing.maxStepDown : m_timing.maxStepUp;
        if (longest > allowed || longest > kLargestReportMove) {
            return fault("moves " + std::to_string(longest) + " counts; at most " +
                         std::to_string(std::min(allowed, kLargestReportMove)) + " are allowed");
        }
        if (report.milliseconds < m_timing.reportIntervalMs) {
            return fault("lasts " + std::to_string(report.milliseconds) + " ms; a move needs " +
                         std::to_string(m_timing.reportIntervalMs));
        }
        const Point from = m_pen;
        m_pen = {m_pen.x + step.x, m_pen.y + step.y};
        if (m_pen.x < 0 || m_pen.y < 0) return fault("moves the pen off the screen");
        if (!m_pressed) return {};
        if (m_pressedOn == Place::Swatch) return fault("drags from the palette bar");
        if (m_pressedOn == Place::FillButton) return fault("drags from the fill button");
        return m_undone ? core::Result<void>() : drag(from, step);
    }

    core::Result<void> drag(Point from, Point step) {
        const std::optional<Point> target = cellAt(m_pen);
        if (!target) {
            if (m_rules.leaving != core::PenLeaving::Undone) {
                return fault("drags the pen off the grid");
            }
            undoStroke();
            return {};
        }
        if (!penKnows(step)) return fault("drags in a way that the pen model does not know");
        const Point heading{signOf(step.x), signOf(step.y)};
        if (!m_rules.turns && m_heading.value_or(heading) != heading) {
            return fault("turns with the pen down");
        }
        m_heading = heading;
        const bool straight = step.x == 0 || step.y == 0;
        if (m_canvas.penModel == PenModel::Sampled || !straight) {
            paint(*target);
            return {};
        }
        Point cell = *cellAt(from);
        while (cell != *target) {
            cell = {cell.x + signOf(target->x - cell.x), cell.y + signOf(target->y - cell.y)};
            paint(cell);
        }
        return {};
    }

    bool penKnows(Point step) const {
        const int across = std::abs(step.x);
        const int down = std::abs(step.y);
        const int pitch = m_canvas.geometry.cellPitch;
        const bool straight = across == 0 || down == 0;
        const bool withinCell = across <= pitch && down <= pitch;
        switch (m_canvas.penModel) {
            case PenModel::WholeCells:
                return straight && withinCell;
            case PenModel::Diagonals:
                return (straight || across == down) && withinCell;
            case PenModel::Lines:
                return straight;
            case PenModel::Sampled:
                return true;
        }
        return false;
    }

    core::Result<void> press() {
        m_pressed = true;
        m_heading.reset();
        m_changes.clear();
        m_undone = false;
        m_stillUntil = m_shown.milliseconds + m_timing.pressMs;
        if (const auto cell = cellAt(m_pen)) {
            if (!m_colour) return fault("paints before a colour was picked");
            m_pressedOn = Place::Grid;
            paint(*cell);
            return {};
        }
        if (m_canvas.geometry.fillButton == m_pen) return fillAll();
        m_pressedOn = Place::Swatch;
        m_colour = swatchAt(m_pen);
        if (!m_colour) {
            return fault("clicks at (" + std::to_string(m_pen.x) + ", " + std::to_string(m_pen.y) +
                         "), which is neither on the grid nor on a swatch");
        }
        return {};
    }

    core::Result<void> fillAll() {
        if (!m_colour) return fault("fills before a colour was picked");
        m_pressedOn = Place::FillButton;
        for (int y = 0; y < m_canvas.size.height; ++y) {
            for (int x = 0; x < m_canvas.size.width; ++x) paint({x, y});
        }
        return {};
    }

    /// What the stroke painted shows again what it showed before; the rest of it paints nothing.
    void undoStroke() {
        for (; !m_changes.empty(); m_changes.pop_back()) {
            show(m_changes.back().first, m_changes.back().second);
        }
        m_undone = true;
    }

    core::Result<void> release() {
        m_pressed = false;
        m_stillUntil = m_shown.milliseconds + m_timing.releaseMs;
        if (m_pressedOn == Place::Grid) {
            ++m_shown.lifts;
            return {};
        }
        ++(m_pressedOn == Place::Swatch ? m_shown.picks : m_shown.fills);
        m_stillUntil += m_timing.settleMs;
        return {};
    }

    std::optional<Point> cellAt(Point place) const {
        const core::CanvasGeometry& g = m_canvas.geometry;
        const Point cell{squareAt(place.x, g.gridCentre.x, g.cellPitch),
                         squareAt(place.y, g.gridCentre.y, g.cellPitch)};
        const bool inside = cell.x >= 0 && cell.y >= 0 && cell.x < m_canvas.size.width &&
                            cell.y < m_canvas.size.height;
        if (!inside) return std::nullopt;
        return cell;
    }

    std::optional<core::PaletteIndex> swatchAt(Point place) const {
        const core::CanvasGeometry& g = m_canvas.geometry;
        const int column = squareAt(place.x, g.swatchCentre.x, g.swatchPitch);
        const int row = squareAt(place.y, g.swatchCentre.y, g.swatchPitch);
        if (column < 0 || row < 0 || row >= g.swatchesPerColumn) return std::nullopt;
        const int index = column * g.swatchesPerColumn + row;
        if (index >= m_canvas.colourLimit()) return std::nullopt;
        return static_cast<core::PaletteIndex>(index);
    }

    void paint(Point cell) {
        const std::size_t offset =
            static_cast<std::size_t>(cell.y) * static_cast<std::size_t>(m_canvas.size.width) +
            static_cast<std::size_t>(cell.x);
        const std::optional<core::PaletteIndex> shown = m_shown.cells[offset];
        if (shown && shown != m_colour) m_coveredAnother = true;
        m_changes.emplace_back(offset, shown);
        show(offset, m_colour);
    }

    void show(std::size_t cell, std::optional<core::PaletteIndex> colour) {
        std::optional<core::PaletteIndex>& shown = m_shown.cells[cell];
        if (m_film != nullptr) m_film->changes.push_back({cell, shown, colour});
        shown = colour;
    }

    const core::Canvas& m_canvas;
    const core::PointerTiming& m_timing;
    const core::PenRules& m_rules;
    Film* m_film;
    Replayed m_shown;
    Point m_pen;
    bool m_pressed = false;
    Place m_pressedOn = Place::Grid;
    bool m_undone = false;           ///< The stroke left the canvas.
    std::vector<Change> m_changes;   ///< What the cells showed before the button went down.
    bool m_coveredAnother = false;   ///< A cell changed its colour.
    std::optional<Point> m_heading;  ///< Of the stroke that is being drawn.
    std::optional<core::PaletteIndex> m_colour;
    std::int64_t m_stillUntil = 0;
    std::int64_t m_number = 0;
};

core::Result<Replayed> carryOut(std::span<const Report> reports, const core::Canvas& canvas,
                                const core::PointerTiming& timing, Film* film) {
    PANTILE_RETURN_IF_ERROR(core::checkGridSize(canvas.size.width, canvas.size.height));
    Toolkit toolkit(canvas, timing, film);
    for (const Report& report : reports) {
        PANTILE_RETURN_IF_ERROR(toolkit.take(report));
    }
    return std::move(toolkit).finish();
}

}  // namespace

core::Result<Replayed> replay(std::span<const Report> reports, const core::Canvas& canvas,
                              const core::PointerTiming& timing) {
    return carryOut(reports, canvas, timing, nullptr);
}

core::Result<Film> filmReplay(std::span<const Report> reports, const core::Canvas& canvas,
                              const core::PointerTiming& timing) {
    Film film;
    film.instants.reserve(reports.size());
    PANTILE_ASSIGN_OR_RETURN(film.end, carryOut(reports, canvas, timing, &film));
    return film;
}

}  // namespace pantile::drawing
