#include "drawing/tours.h"

#include <algorithm>
#include <array>
#include <limits>
#include <optional>
#include <utility>

#include "drawing/cover.h"

namespace pantile::drawing {
namespace {

constexpr std::array kCorners{Corner::FirstForwards, Corner::FirstBackwards, Corner::LastForwards,
                              Corner::LastBackwards};

bool startsBackwards(Corner corner) {
    return corner == Corner::FirstBackwards || corner == Corner::LastBackwards;
}

bool startsLast(Corner corner) {
    return corner == Corner::LastForwards || corner == Corner::LastBackwards;
}

bool sameLine(const StraightRun& a, const StraightRun& b, Lines lines) {
    return lines == Lines::Rows ? a.from.y == b.from.y : a.from.x == b.from.x;
}

/// Finds the run with the nearest end, by squares of cells with the ends that lie in them.
class NearestRun {
public:
    NearestRun(const Runs& runs, core::Size grid)
        : m_drawn(runs.size()),
          m_across((grid.width + kSide - 1) / kSide),
          m_down((grid.height + kSide - 1) / kSide),
          m_ends(static_cast<std::size_t>(m_across) * static_cast<std::size_t>(m_down)) {
        for (std::size_t i = 0; i < runs.size(); ++i) {
            add(i, runs[i].from, runs[i].to);
            if (runs[i].from != runs[i].to) add(i, runs[i].to, runs[i].from);
        }
    }

    /// The nearest run not yet drawn, turned so that it begins near `cell`; none if all are drawn.
    std::optional<StraightRun> take(core::Point cell) {
        const End* best = nullptr;
        int bestDistance = std::numeric_limits<int>::max();
        for (int ring = 0; ring < std::max(m_across, m_down); ++ring) {
            if (bestDistance <= (ring - 1) * kSide) break;
            searchRing({cell.x / kSide, cell.y / kSide}, ring, cell, best, bestDistance);
        }
        if (best == nullptr) return std::nullopt;
        m_drawn[best->run] = true;
        return StraightRun{best->from, best->to};
    }

    void markDrawn(std::size_t run) { m_drawn[run] = true; }

private:
    static constexpr int kSide = 8;

    struct End {
        std::size_t run;
        core::Point from;
        core::Point to;
    };

    void add(std::size_t run, core::Point from, core::Point to) {
        endsIn({from.x / kSide, from.y / kSide}).push_back({run, from, to});
    }

    std::vector<End>& endsIn(core::Point square) {
        return m_ends[static_cast<std::size_t>(square.y) * static_cast<std::size_t>(m_across) +
                      static_cast<std::size_t>(square.x)];
    }

    void searchRing(core::Point centre, int ring, core::Point cell, const End*& best,
                    int& bestDistance) {
        const int top = std::max(centre.y - ring, 0);
        const int bottom = std::min(centre.y + ring, m_down - 1);
        for (int y = top; y <= bottom; ++y) {
            const bool edgeRow = y == centre.y - ring || y == centre.y + ring;
            const int stride = edgeRow || ring == 0 ? 1 : 2 * ring;
            for (int x = centre.x - ring; x <= centre.x + ring; x += stride) {
                if (x < 0 || x >= m_across) continue;
                searchSquare(endsIn({x, y}), cell, best, bestDistance);
            }
        }
    }

    void searchSquare(std::vector<End>& ends, core::Point cell, const End*& best,
                      int& bestDistance) {
        std::erase_if(ends, [this](const End& end) { return m_drawn[end.run]; });
        for (const End& end : ends) {
            const int distance = longerSide(cell, end.from);
            if (distance >= bestDistance) continue;
            bestDistance = distance;
            best = &end;
        }
    }

    std::vector<bool> m_drawn;
    int m_across;
    int m_down;
    std::vector<std::vector<End>> m_ends;
};

/// The run with an end nearest to a place off the grid, and which it is.
std::pair<std::size_t, StraightRun> firstRun(const Runs& runs, core::Point startCounts,
                                             const TimeModel& model) {
    std::pair<std::size_t, StraightRun> best{0, runs.front()};
    int bestDistance = std::numeric_limits<int>::max();
    for (std::size_t i = 0; i < runs.size(); ++i) {
        for (const StraightRun& run : {runs[i], turned(runs[i])}) {
            const int distance = longerSide(startCounts, model.cellCentre(run.from));
            if (distance >= bestDistance) continue;
            bestDistance = distance;
            best = {i, run};
        }
    }
    return best;
}

}  // namespace

Runs serpentine(const Runs& runs, Lines lines, Corner corner) {
    std::vector<Runs> byLine;
    for (const StraightRun& run : runs) {
        if (byLine.empty() || !sameLine(byLine.back().back(), run, lines)) byLine.emplace_back();
        byLine.back().push_back(run);
    }
    if (startsLast(corner)) std::reverse(byLine.begin(), byLine.end());
    bool backwards = startsBackwards(corner);
    Runs tour;
    tour.reserve(runs.size());
    for (Runs& line : byLine) {
        if (backwards) {
            std::reverse(line.begin(), line.end());
            std::transform(line.begin(), line.end(), line.begin(), turned);
        }
        tour.insert(tour.end(), line.begin(), line.end());
        backwards = !backwards;
    }
    return tour;
}

Runs nearestFirst(const Runs& runs, core::Size grid, core::Point startCounts,
                  const TimeModel& model) {
    if (runs.empty()) return {};
    NearestRun nearest(runs, grid);
    const auto [index, first] = firstRun(runs, startCounts, model);
    nearest.markDrawn(index);
    Runs tour{first};
    tour.reserve(runs.size());
    while (const auto next = nearest.take(tour.back().to)) tour.push_back(*next);
    return tour;
}

std::int64_t tourMs(const Runs& runs, core::PaletteIndex colour, const TimeModel& model) {
    if (runs.empty()) return 0;
    std::int64_t total =
        model.travelMs(model.swatch(colour), model.cellCentre(runs.front().from)) + model.clickMs();
    for (std::size_t i = 0; i < runs.size(); ++i) {
        if (i > 0) total += model.linkMs(runs[i - 1].to, runs[i].from);
        total += model.dragMs(runs[i].from, runs[i].to);
    }
    return total;
}

std::vector<Tour> toursOf(core::PaletteIndex colour, const Runs& rows, const Runs& columns,
                          core::Size grid, const TimeModel& model) {
    std::vector<Tour> tours;
    const auto keep = [&](Runs runs) {
        const std::int64_t milliseconds = tourMs(runs, colour, model);
        tours.push_back({std::move(runs), milliseconds});
    };
    const core::Point swatch = model.swatch(colour);
    for (const Corner corner : kCorners) keep(serpentine(rows, Lines::Rows, corner));
    for (const Corner corner : kCorners) keep(serpentine(columns, Lines::Columns, corner));
    keep(nearestFirst(rows, grid, swatch, model));
    keep(nearestFirst(columns, grid, swatch, model));
    keep(nearestFirst(fewestRuns(rows, columns, grid), grid, swatch, model));
    return tours;
}

}  // namespace pantile::drawing
