#include "drawing/visit_search.h"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <utility>

#include "core/split_mix.h"
#include "drawing/covering_order.h"
#include "drawing/go_on.h"
#include "drawing/least_tree.h"

namespace pantile::drawing {
namespace {

/// Which cells of a part are moved to another one.
enum class Cut : unsigned char { Single, Ends, Sparse40, Sparse30, Sparse20, Window, All };

/// Tried one after the other on every part, before chance chooses.
constexpr std::array kUsualCuts{Cut::Single, Cut::Ends, Cut::Sparse40, Cut::Sparse30,
                                Cut::Sparse20};
constexpr std::array kAllCuts{Cut::Single,   Cut::Ends,   Cut::Sparse40, Cut::Sparse30,
                              Cut::Sparse20, Cut::Window, Cut::All};
constexpr int kAround = 2;  ///< How far cells lie from one whose surroundings are judged.
constexpr int kStepsThatAreMany = 12;
constexpr std::int64_t kLossLooked = 100;  ///< Of the whole, what a part may lose on its way.

/// How much like its own colour a cell's surroundings are.
struct Surroundings {
    int alikeBeside = 0;  ///< Of the four neighbours.
    int percent = 0;      ///< Of the square around, itself too.
};

Surroundings surroundingsOf(core::Point cell, const DrawingRequest& request) {
    Surroundings here;
    int cells = 0;
    int alike = 0;
    for (int dy = -kAround; dy <= kAround; ++dy) {
        for (int dx = -kAround; dx <= kAround; ++dx) {
            const core::Point there{cell.x + dx, cell.y + dy};
            if (!request.grid.contains(there)) continue;
            ++cells;
            if (request.grid.at(there) != request.grid.at(cell)) continue;
            ++alike;
            if (std::abs(dx) + std::abs(dy) == 1) ++here.alikeBeside;
        }
    }
    here.percent = 100 * alike / cells;
    return here;
}

class VisitSearch {
public:
    VisitSearch(const DrawingRequest& request, const TimeModel& model, const PenWays& ways,
                std::vector<Part> order, std::uint64_t seed)
        : m_ways(ways),
          m_visits{Parts::wholeColours(request), std::move(order)},
          m_visitMs(visitMs(request, model)),
          m_numbers(seed) {
        for (int y = 0; y < request.grid.height(); ++y) {
            for (int x = 0; x < request.grid.width(); ++x) {
                m_surroundings.push_back(surroundingsOf({x, y}, request));
            }
        }
        LeastTree trees(m_visits.parts, m_ways);
        measure(trees);
    }

    core::Result<void> run(std::int64_t mostWork, const core::Progress& progress) {
        bool better = true;
        while (better) {
            better = false;
            const std::vector<Part> parts = m_visits.order;
            for (const Cut cut : kUsualCuts) {
                for (const Part part : parts) {
                    PANTILE_RETURN_IF_ERROR(tell(progress, mostWork));
                    if (m_work >= mostWork) return {};
                    better = attempt(part, cut) || better;
                }
            }
        }
        while (m_comesBack && m_work < mostWork) {
            PANTILE_RETURN_IF_ERROR(tell(progress, mostWork));
            const Part part = m_visits.order[m_numbers.placeIn(m_visits.order.size())];
            attempt(part, kAllCuts.at(m_numbers.placeIn(kAllCuts.size())));
        }
        return {};
    }

    std::int64_t work() const { return m_work; }

    Visits take() && { return std::move(m_visits); }

private:
    /// A pick from the middle of the grid and back to it, and a press.
    static std::int64_t visitMs(const DrawingRequest& request, const TimeModel& model) {
        const core::Point middle{request.grid.width() / 2, request.grid.height() / 2};
        const std::int64_t way = model.travelMs(model.cellCentre(middle), model.swatch(0));
        return 2 * way + 2 * model.clickMs() + model.timing().settleMs;
    }

    std::int64_t picksMs(const std::vector<Part>& order) const {
        return static_cast<std::int64_t>(order.size()) * m_visitMs;
    }

    void measure(LeastTree& trees) {
        m_ms = treesMs(trees, m_visits.order) + picksMs(m_visits.order);
        for (const Part part : m_visits.order)
            m_treeMs.at(part) = treeMs(trees, m_visits.order, part);
    }

    static std::int64_t treeMs(LeastTree& trees, const std::vector<Part>& order, Part part) {
        ColourSet later;
        for (auto other = std::find(order.begin(), order.end(), part); other != order.end();
             ++other) {
            later.set(*other);
        }
        return trees.milliseconds(part, later);
    }

    core::Result<void> tell(const core::Progress& progress, std::int64_t mostWork) const {
        return goOn(progress, std::min(m_work, mostWork), mostWork, "planning visits");
    }

    /// Moves some cells of a part to another visit and keeps that if it is quicker; whether it is.
    bool attempt(Part part, Cut cut) {
        ++m_work;
        const auto place = std::find(m_visits.order.begin(), m_visits.order.end(), part);
        if (place == m_visits.order.end()) return false;
        const std::vector<std::size_t> moved = cellsOf(part, cut);
        const bool all = moved.size() == m_sizeOfPart;
        if (moved.empty() || all != (cut == Cut::All)) return false;
        const std::optional<Part> target = targetOf(part, all);
        if (!target) return false;
        Visits trial = m_visits;
        const bool isNew = !isInOrder(*target);
        if (isNew)
            trial.order.insert(trial.order.begin() + (place - m_visits.order.begin()), *target);
        if (all) std::erase(trial.order, part);
        trial.parts = withMoved(moved, *target, part);
        return keepIfQuicker(std::move(trial), *target, part);
    }

    /// By their places in the grid; and counts all of the part.
    std::vector<std::size_t> cellsOf(Part part, Cut cut) {
        const auto cells = m_visits.parts.grid.cells();
        std::vector<std::size_t> all;
        for (std::size_t i = 0; i < cells.size(); ++i) {
            if (cells[i] == part) all.push_back(i);
        }
        m_sizeOfPart = all.size();
        const Window window = windowAround(all[m_numbers.placeIn(all.size())]);
        std::erase_if(all, [&](std::size_t cell) { return !isCut(cell, cut, window); });
        return all;
    }

    struct Window {
        core::Point centre;
        core::Size reach;
    };

    core::Point cellAt(std::size_t place) const {
        const auto width = static_cast<std::size_t>(m_visits.parts.grid.width());
        return {static_cast<int>(place % width), static_cast<int>(place / width)};
    }

    Window windowAround(std::size_t place) {
        constexpr int kLeastReach = 2;
        const core::Size size = m_visits.parts.grid.size();
        const auto half = static_cast<std::uint64_t>(std::max(size.width, size.height)) / 2 + 1;
        const int across = kLeastReach + static_cast<int>(m_numbers.below(half));
        const int down = kLeastReach + static_cast<int>(m_numbers.below(half));
        return {cellAt(place), {across, down}};
    }

    bool isCut(std::size_t place, Cut cut, const Window& window) const {
        const Surroundings& here = m_surroundings[place];
        switch (cut) {
            case Cut::Single:
                return here.alikeBeside == 0;
            case Cut::Ends:
                return here.alikeBeside <= 1;
            case Cut::Sparse40:
                return here.percent < 40;
            case Cut::Sparse30:
                return here.percent < 30;
            case Cut::Sparse20:
                return here.percent < 20;
            case Cut::Window: {
                const core::Point cell = cellAt(place);
                return std::abs(cell.x - window.centre.x) <= window.reach.width &&
                       std::abs(cell.y - window.centre.y) <= window.reach.height;
            }
            case Cut::All:
                return true;
        }
        return false;
    }

    bool isInOrder(Part part) const {
        return std::find(m_visits.order.begin(), m_visits.order.end(), part) !=
               m_visits.order.end();
    }

    /// Another part of the colour, or, unless the whole part moves, perhaps a new one.
    std::optional<Part> targetOf(Part part, bool all) {
        std::vector<Part> same;
        for (const Part other : m_visits.order) {
            const bool alike = m_visits.parts.colours[other] == m_visits.parts.colours[part];
            if (alike && other != part) same.push_back(other);
        }
        if (!same.empty() && (all || m_numbers.below(2) == 0)) {
            return same[m_numbers.placeIn(same.size())];
        }
        if (all) return std::nullopt;
        return m_visits.parts.freeNumber();
    }

    Parts withMoved(const std::vector<std::size_t>& moved, Part target, Part from) const {
        const auto cells = m_visits.parts.grid.cells();
        std::vector<Part> changed(cells.begin(), cells.end());
        for (const std::size_t place : moved) changed[place] = target;
        const core::Size size = m_visits.parts.grid.size();
        Parts parts = m_visits.parts;
        parts.grid = core::Grid::create(size.width, size.height, std::move(changed)).value();
        parts.colours[target] = parts.colours[from];
        return parts;
    }

    /// Of a trial in which `target` is a new part cut from `part`, next to it: nothing else
    /// changes.
    std::int64_t cutMs(LeastTree& trees, const Visits& trial, Part target, Part part) const {
        return m_ms + m_visitMs - m_treeMs.at(part) + treeMs(trees, trial.order, part) +
               treeMs(trees, trial.order, target);
    }

    bool keepIfQuicker(Visits trial, Part target, Part part) {
        LeastTree trees(trial.parts, m_ways);
        std::int64_t ms = trial.order.size() > m_visits.order.size()
                              ? cutMs(trees, trial, target, part)
                              : treesMs(trees, trial.order) + picksMs(trial.order);
        ms -= shiftToBest(trees, trial.order, target, m_ms / kLossLooked);
        m_work += trees.work() + static_cast<std::int64_t>(m_surroundings.size());
        if (ms >= m_ms) return false;
        m_visits = std::move(trial);
        m_comesBack = true;
        measure(trees);
        return true;
    }

    const PenWays& m_ways;
    Visits m_visits;
    std::int64_t m_visitMs;
    std::int64_t m_ms = 0;                     ///< Of the trees and the picks.
    std::array<std::int64_t, 256> m_treeMs{};  ///< By part.
    core::SplitMix64 m_numbers;
    std::vector<Surroundings> m_surroundings;  ///< By cell.
    std::size_t m_sizeOfPart = 0;              ///< Of the one whose cells were listed last.
    bool m_comesBack = false;                  ///< If no usual cut pays, others hardly do.
    std::int64_t m_work = 0;
};

}  // namespace

bool mayComeBack(const DrawingRequest& request, const PenWays& ways) {
    return request.canvas.rules.covers && request.canvas.penModel != core::PenModel::Sampled &&
           ways.depth >= kStepsThatAreMany;
}

core::Result<Visits> seekVisits(const DrawingRequest& request, const TimeModel& model,
                                const PenWays& ways, std::vector<Part> order, VisitEffort& effort,
                                const core::Progress& progress) {
    VisitSearch search(request, model, ways, std::move(order), effort.seed);
    PANTILE_RETURN_IF_ERROR(search.run(effort.mostWork, progress));
    effort.work = search.work();
    return std::move(search).take();
}

}  // namespace pantile::drawing
