#include "drawing/row_runs.h"

#include <cassert>

namespace pantile::drawing {
namespace {

using core::Point;

/// Which visit painted each cell last.
class LastVisits {
public:
    static constexpr int kNone = -1;

    explicit LastVisits(core::Size grid)
        : m_width(grid.width),
          m_last(static_cast<std::size_t>(grid.width) * static_cast<std::size_t>(grid.height),
                 kNone) {}

    int at(Point cell) const { return m_last[index(cell)]; }

    void paint(const Stroke& stroke, int visit) {
        Point pen = stroke.path.front();
        set(pen, visit);
        for (std::size_t i = 1; i < stroke.path.size(); ++i) {
            const Point to = stroke.path[i];
            if (stroke.jumpsTo(i)) {
                pen = to;
                set(pen, visit);
            }
            const Point step = {(to.x > pen.x) - (to.x < pen.x), (to.y > pen.y) - (to.y < pen.y)};
            while (pen != to) {
                pen = {pen.x + step.x, pen.y + step.y};
                set(pen, visit);
            }
        }
    }

private:
    std::size_t index(Point cell) const {
        return static_cast<std::size_t>(cell.y) * static_cast<std::size_t>(m_width) +
               static_cast<std::size_t>(cell.x);
    }

    void set(Point cell, int visit) { m_last[index(cell)] = visit; }

    int m_width;
    std::vector<int> m_last;
};

/// The runs of one row.
class RowRuns {
public:
    RowRuns(VisitStrokes& runs, core::PaletteIndex colour, const TimeModel& model)
        : m_runs(runs), m_colour(colour), m_model(model) {}

    void take(Point cell) {
        if (m_open && goesOnTo(cell)) {
            Stroke& run = m_runs.back();
            run.path = {run.path.front(), cell};
        } else {
            m_runs.push_back({m_colour, {cell}});
        }
        m_open = true;
    }

    /// What must not be passed over.
    void close() { m_open = false; }

private:
    bool goesOnTo(Point cell) const {
        const Point last = m_runs.back().path.back();
        const std::int64_t lift = m_model.clickMs() + m_model.travelMs(m_model.cellCentre(last),
                                                                       m_model.cellCentre(cell));
        return m_model.dragMs(last, cell) <= lift;
    }

    VisitStrokes& m_runs;
    core::PaletteIndex m_colour;
    const TimeModel& m_model;
    bool m_open = false;
};

}  // namespace

std::vector<VisitStrokes> visitsOf(std::span<const Stroke> strokes) {
    std::vector<VisitStrokes> visits;
    for (const Stroke& stroke : strokes) {
        if (visits.empty() || visits.back().front().colour != stroke.colour) visits.emplace_back();
        visits.back().push_back(stroke);
    }
    return visits;
}

std::vector<VisitStrokes> asRowRuns(std::span<const VisitStrokes> visits, core::Size grid,
                                    const TimeModel& model, bool covers) {
    LastVisits last(grid);
    for (std::size_t i = 0; i < visits.size(); ++i) {
        for (const Stroke& stroke : visits[i]) last.paint(stroke, static_cast<int>(i));
    }
    std::vector<VisitStrokes> all(visits.size());
    for (int y = 0; y < grid.height; ++y) {
        std::vector<RowRuns> rows;
        for (std::size_t i = 0; i < visits.size(); ++i) {
            rows.emplace_back(all[i], visits[i].front().colour, model);
        }
        for (int x = 0; x < grid.width; ++x) {
            const int visit = last.at({x, y});
            for (std::size_t i = 0; i < visits.size(); ++i) {
                const int here = static_cast<int>(i);
                if (visit == here) {
                    rows[i].take({x, y});
                } else if (visit < here || !covers) {
                    rows[i].close();
                }
            }
        }
    }
    return all;
}

std::int64_t visitMs(const VisitStrokes& visit, const TimeModel& model) {
    std::int64_t total = 0;
    for (std::size_t i = 0; i < visit.size(); ++i) {
        if (i > 0) {
            total += model.travelMs(model.cellCentre(visit[i - 1].path.back()),
                                    model.cellCentre(visit[i].path.front()));
        }
        total += model.strokeMs(visit[i]);
    }
    return total;
}

}  // namespace pantile::drawing
