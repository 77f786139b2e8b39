#include "drawing/layered_plan.h"

#include <algorithm>
#include <iterator>
#include <utility>

#include "drawing/cover.h"
#include "drawing/go_on.h"
#include "drawing/pen_path.h"

namespace pantile::drawing {
namespace {

using core::PaletteIndex;

constexpr int kKicksAtOnce = 50;
constexpr int kNodesForALot = 4;
constexpr std::uint64_t kLongestMove = 3;     ///< Places that a colour is moved by.
constexpr std::int64_t kMovesOfTenTries = 3;  ///< The share of the effort that goes to the order.

Runs singleCells(Part part, const Parts& parts) {
    Runs runs;
    for (int y = 0; y < parts.grid.height(); ++y) {
        for (int x = 0; x < parts.grid.width(); ++x) {
            const core::Point cell{x, y};
            if (parts.isPainted(cell) && parts.grid.at(cell) == part) runs.push_back({cell, cell});
        }
    }
    return runs;
}

/// For each part the ways to cut it into runs that are worth a tour. Single cells leave a tour
/// most freedom; where the pen draws long lines at once, runs keep them whole.
std::vector<std::vector<Runs>> runChoices(const DrawingRequest& request, const Parts& parts) {
    std::vector<std::vector<Runs>> choices(256);
    if (request.canvas.penModel != core::PenModel::Lines) return choices;
    DrawingRequest asParts = request;
    asParts.grid = parts.grid;
    const std::vector<Runs> rows = rowRuns(asParts);
    const std::vector<Runs> columns = columnRuns(asParts);
    for (std::size_t i = 0; i < choices.size(); ++i) {
        if (rows[i].empty()) continue;
        choices[i] = {rows[i], columns[i], fewestRuns(rows[i], columns[i], request.grid.size())};
    }
    return choices;
}

}  // namespace

LayeredPlan::LayeredPlan(const DrawingRequest& request, const TimeModel& model, Visits visits)
    : m_request(&request),
      m_model(&model),
      m_ways(request, model),
      m_parts(std::move(visits.parts)),
      m_order(std::move(visits.order)) {}

core::Result<LayeredPlan> LayeredPlan::create(const DrawingRequest& request, const TimeModel& model,
                                              Visits visits, const core::Progress& progress) {
    LayeredPlan plan(request, model, std::move(visits));
    const std::vector<std::vector<Runs>> choices = runChoices(request, plan.m_parts);
    for (std::size_t place = 0; place < plan.m_order.size(); ++place) {
        PANTILE_RETURN_IF_ERROR(goOn(progress, static_cast<std::int64_t>(place),
                                     static_cast<std::int64_t>(plan.m_order.size())));
        plan.addTour(place, choices[plan.m_order[place]]);
    }
    return plan;
}

PaletteIndex LayeredPlan::colourAt(std::size_t place) const {
    return m_parts.colours[m_order[place]];
}

/// Cells of the layer's own colour may be passed whenever they are painted.
std::vector<std::uint8_t> LayeredPlan::passableAt(std::size_t place) const {
    std::vector<std::uint8_t> isPassable(256);
    for (std::size_t i = 0; i < m_order.size(); ++i) {
        const bool isCovered = i > place && m_request->canvas.rules.covers;
        if (isCovered || colourAt(i) == colourAt(place)) isPassable[m_order[i]] = 1;
    }
    std::vector<std::uint8_t> passable;
    passable.reserve(cellCount(m_ways.grid));
    for (const Part part : m_parts.grid.cells()) passable.push_back(isPassable[part]);
    return passable;
}

Layer LayeredPlan::layerOf(std::size_t place, const Runs& runs) const {
    return {colourAt(place), runs, passableAt(place)};
}

/// The quickest of the tours through single cells and through the runs given.
void LayeredPlan::addTour(std::size_t place, const std::vector<Runs>& choices) {
    m_runs.push_back(singleCells(m_order[place], m_parts));
    m_tours.push_back(tourOf(place, m_runs.back()));
    for (const Runs& runs : choices) {
        PenTour tour = tourOf(place, runs);
        if (tour.milliseconds() >= m_tours.back().milliseconds()) continue;
        m_runs.back() = runs;
        m_tours.back() = std::move(tour);
    }
}

std::vector<std::int64_t> LayeredPlan::toNext(std::size_t place, const Links& links) const {
    std::vector<std::int64_t> ways(links.count());
    if (place + 1 == m_order.size()) return ways;
    const core::Point swatch = m_model->swatch(colourAt(place + 1));
    for (Node node = 0; node < links.count(); ++node) {
        ways[node] = m_model->travelMs(m_model->cellCentre(links.cell(node)), swatch);
    }
    return ways;
}

PenTour LayeredPlan::tourOf(std::size_t place, const Runs& runs) const {
    Links links(layerOf(place, runs), m_ways, *m_model);
    const core::Point swatch = m_model->swatch(colourAt(place));
    std::vector<std::int64_t> fromSwatch;
    for (Node node = 0; node < links.count(); ++node) {
        const core::Point cell = m_model->cellCentre(links.cell(node));
        fromSwatch.push_back(m_model->travelMs(swatch, cell) + m_model->clickMs());
    }
    std::vector<std::int64_t> onward = toNext(place, links);
    return {std::move(links), std::move(fromSwatch), std::move(onward)};
}

std::int64_t LayeredPlan::firstWayMs() const {
    if (m_order.empty()) return 0;
    return m_model->travelMs(m_model->start(), m_model->swatch(colourAt(0)));
}

std::int64_t LayeredPlan::milliseconds() const {
    const std::int64_t pickMs = m_model->clickMs() + m_model->timing().settleMs;
    std::int64_t total = firstWayMs() + static_cast<std::int64_t>(m_order.size()) * pickMs;
    for (const PenTour& tour : m_tours) total += tour.milliseconds();
    return total;
}

std::vector<Stroke> LayeredPlan::strokes() const {
    std::vector<Stroke> strokes;
    for (std::size_t place = 0; place < m_order.size(); ++place) {
        const PenTour& tour = m_tours[place];
        std::vector<Stroke> layer =
            strokesAlong(tour.order(), tour.links(), colourAt(place), passableAt(place), m_ways);
        std::move(layer.begin(), layer.end(), std::back_inserter(strokes));
    }
    return strokes;
}

core::Result<void> LayeredPlan::improve(std::int64_t tries, std::uint64_t seed,
                                        const core::Progress& progress) {
    core::SplitMix64 numbers(seed);
    std::int64_t done = 0;
    std::int64_t moves = 0;
    listLots();
    while (done < tries && !m_lots.empty()) {
        PANTILE_RETURN_IF_ERROR(goOn(progress, done, tries));
        if (m_order.size() > 1 && 10 * moves < kMovesOfTenTries * done) {
            const std::int64_t work = tryMove(numbers);
            moves += work;
            done += work;
        } else {
            kickSome(numbers);
            done += kKicksAtOnce;
        }
    }
    return {};
}

void LayeredPlan::listLots() {
    m_lots.clear();
    for (std::size_t place = 0; place < m_tours.size(); ++place) {
        const std::size_t lots =
            (m_tours[place].links().count() + kNodesForALot - 1) / kNodesForALot;
        m_lots.insert(m_lots.end(), lots, place);
    }
}

void LayeredPlan::kickSome(core::SplitMix64& numbers) {
    for (int i = 0; i < kKicksAtOnce; ++i) {
        m_tours[m_lots[numbers.placeIn(m_lots.size())]].kick(numbers);
    }
}

void LayeredPlan::moveColour(std::size_t from, std::size_t to) {
    const auto turn = [&](auto& list) {
        const auto begin = list.begin();
        const auto at = [&](std::size_t i) { return begin + static_cast<std::ptrdiff_t>(i); };
        if (from < to) {
            std::rotate(at(from), at(from + 1), at(to + 1));
        } else {
            std::rotate(at(to), at(from), at(from + 1));
        }
    };
    turn(m_order);
    turn(m_runs);
    turn(m_tours);
}

/// Gives the layers of the places their new links and makes them short; tells the work in tries.
std::int64_t LayeredPlan::relink(std::size_t first, std::size_t last, core::SplitMix64& numbers) {
    std::int64_t work = 0;
    for (std::size_t place = first; place <= last; ++place) {
        PenTour& tour = m_tours[place];
        Links links(layerOf(place, m_runs[place]), m_ways, *m_model);
        std::vector<std::int64_t> onward = toNext(place, links);
        tour.relink(std::move(links), std::move(onward));
        const Node kicks = tour.links().count() / 2;
        for (Node i = 0; i < kicks; ++i) tour.kick(numbers);
        work += tour.links().count() + kicks;
    }
    return work;
}

/// Moves a colour by a few places, and keeps that unless it is slower; tells the work in tries.
std::int64_t LayeredPlan::tryMove(core::SplitMix64& numbers) {
    const std::size_t from = numbers.placeIn(m_order.size());
    const std::size_t by = 1 + numbers.placeIn(kLongestMove);
    const bool towardsEnd = numbers.below(2) == 0;
    if (towardsEnd ? from + by >= m_order.size() : from < by) return 1;
    const std::size_t to = towardsEnd ? from + by : from - by;
    // The layer before the first one moved ends elsewhere: it is linked anew with them.
    const std::size_t first = std::min(from, to) == 0 ? 0 : std::min(from, to) - 1;
    const std::size_t last = std::max(from, to);
    const std::int64_t known = milliseconds();
    const auto begin = m_tours.begin() + static_cast<std::ptrdiff_t>(first);
    std::vector<PenTour> kept(begin, m_tours.begin() + static_cast<std::ptrdiff_t>(last) + 1);
    moveColour(from, to);
    const std::int64_t work = relink(first, last, numbers);
    if (milliseconds() > known) {
        moveColour(to, from);
        std::move(kept.begin(), kept.end(), m_tours.begin() + static_cast<std::ptrdiff_t>(first));
    } else {
        listLots();
    }
    return work;
}

}  // namespace pantile::drawing
