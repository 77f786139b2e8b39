// provenBounds: the proofs, with the same letters, are in docs/drawing.md section 6.2.

#include "drawing/proven_bound.h"

#include <algorithm>
#include <numeric>
#include <optional>
#include <vector>

#include "drawing/cheapest_order.h"
#include "drawing/fill.h"
#include "drawing/least_tree.h"
#include "drawing/path_bound.h"
#include "drawing/planner.h"
#include "drawing/timing.h"

namespace pantile::drawing {
namespace {

using core::PaletteIndex;

constexpr std::size_t kMostColoursInOrder = CheapestOrder::kMost;
constexpr std::size_t kMostCellsForPaths = 1500;
constexpr int kRounds = 120;
constexpr int kRoundsAgain = 30;  ///< With prices that served for other passable cells.
/// Distances looked at to make the costs along the cheapest orders exact, for each of the two
/// bounds.
constexpr std::int64_t kMostWork = 3'000'000'000;
constexpr std::int64_t kEndless = CheapestOrder::kEndless;

core::Error stopped() {
    return {core::ErrorKind::Cancelled, "proving the bound was stopped", ""};
}

/// Where every swatch lies that a plan may click, needed or not.
std::vector<core::Point> swatchesOf(const DrawingRequest& request, const TimeModel& model) {
    std::vector<core::Point> swatches;
    swatches.reserve(static_cast<std::size_t>(request.canvas.colourLimit()));
    for (int i = 0; i < request.canvas.colourLimit(); ++i) {
        swatches.push_back(model.swatch(static_cast<PaletteIndex>(i)));
    }
    return swatches;
}

/// The longest way between two swatches.
std::int64_t spanMs(const std::vector<core::Point>& swatches, const TimeModel& model) {
    core::Point least = swatches.front();
    core::Point most = swatches.front();
    for (const core::Point swatch : swatches) {
        least = {std::min(least.x, swatch.x), std::min(least.y, swatch.y)};
        most = {std::max(most.x, swatch.x), std::max(most.y, swatch.y)};
    }
    return model.travelMs(least, most);
}

class Prover {
public:
    Prover(const DrawingRequest& request, const core::Progress& progress)
        : m_request(request),
          m_progress(progress),
          m_model(request.canvas, request.timing),
          m_ways(request, m_model),
          m_trees(request, m_ways, LeastTree::kAnySteps),
          m_swatches(swatchesOf(request, m_model)),
          m_cells(m_trees.colours().size()),
          m_treeEndsMs(m_trees.colours().size()),
          m_prices(m_trees.colours().size()) {
        listCells();
        for (std::size_t place = 0; place < m_cells.size(); ++place) measureEnds(place);
    }

    /// What an additional visit of a colour adds at the least to a path through all its cells.
    std::int64_t visitMs() const { return pickMs() - spanMs(m_swatches, m_model); }

    core::Result<ProvenBounds> bounds() {
        PANTILE_RETURN_IF_ERROR(boundPaths());
        const std::int64_t free =
            std::accumulate(m_freeMs.begin(), m_freeMs.end(), std::int64_t{0});
        ProvenBounds least{free, free};
        if (m_cells.size() > 1 && m_cells.size() <= kMostColoursInOrder) {
            PANTILE_RETURN_IF_ERROR(plantTrees());
            const std::vector<std::int64_t> never(m_cells.size(), kEndless);
            PANTILE_ASSIGN_OR_RETURN(least.pickedOnce, bestOrder(never));
            PANTILE_ASSIGN_OR_RETURN(least.everyPlan, bestOrder(m_twiceMs));
            least.pickedOnce = std::max(least.pickedOnce, least.everyPlan);
        }
        const auto picks = static_cast<std::int64_t>(m_cells.size()) * pickMs();
        const std::int64_t around = firstWayMs() + picks - m_longestLastWay;
        return ProvenBounds{around + least.everyPlan, around + least.pickedOnce};
    }

private:
    void listCells() {
        const auto& colours = m_trees.colours();
        for (int y = 0; y < m_ways.grid.height; ++y) {
            for (int x = 0; x < m_ways.grid.width; ++x) {
                if (!m_request.isPainted({x, y})) continue;
                const auto place =
                    std::lower_bound(colours.begin(), colours.end(), m_request.grid.at(x, y)) -
                    colours.begin();
                m_cells[static_cast<std::size_t>(place)].push_back({x, y});
            }
        }
    }

    std::int64_t firstWayMs() const {
        std::int64_t least = kEndless;
        for (const core::Point swatch : m_swatches) {
            least = std::min(least, m_model.travelMs(m_model.start(), swatch));
        }
        return least;
    }

    std::int64_t wayIn(std::size_t place, core::Point cell) const {
        return m_model.clickMs() +
               m_model.travelMs(m_model.swatch(m_trees.colours()[place]), m_model.cellCentre(cell));
    }

    /// To the nearest swatch of another colour.
    std::int64_t wayOut(std::size_t place, core::Point cell) const {
        std::int64_t least = kEndless;
        for (std::size_t i = 0; i < m_swatches.size(); ++i) {
            if (i == m_trees.colours()[place]) continue;
            least = std::min(least, m_model.travelMs(m_model.cellCentre(cell), m_swatches[i]));
        }
        return least;
    }

    void measureEnds(std::size_t place) {
        std::int64_t in = kEndless;
        std::int64_t out = kEndless;
        for (const core::Point cell : m_cells[place]) {
            const std::int64_t outHere = wayOut(place, cell);
            in = std::min(in, wayIn(place, cell));
            out = std::min(out, outHere);
            m_longestLastWay = std::max(m_longestLastWay, outHere);
            for (const core::Point swatch : m_swatches) {
                m_leastWayOut =
                    std::min(m_leastWayOut, m_model.travelMs(m_model.cellCentre(cell), swatch));
            }
        }
        m_treeEndsMs[place] = in + out;
    }

    /// The colour's path where the cells of colours in `blocked` may not be passed.
    PathBounds pathOf(std::size_t place, Subset blocked, int rounds) {
        m_work += static_cast<std::int64_t>(m_cells[place].size() * m_cells[place].size()) * rounds;
        ColourSet passable;
        std::vector<std::uint8_t> isPassable(256);
        for (std::size_t i = 0; i < m_cells.size(); ++i) {
            if (i < kMostColoursInOrder && holds(blocked, i)) continue;
            passable.set(m_trees.colours()[i]);
            isPassable[m_trees.colours()[i]] = 1;
        }
        const PaletteIndex colour = m_trees.colours()[place];
        const std::int64_t tree = m_treeEndsMs[place] + m_trees.measured(colour, passable);
        if (m_cells[place].size() > kMostCellsForPaths) return {tree, std::nullopt};
        PathTask task{m_cells[place], {}, {}, {}, m_treeEndsMs[place] + pickMs()};
        for (const PaletteIndex there : m_request.grid.cells()) {
            task.passable.push_back(isPassable[there]);
        }
        for (const core::Point cell : task.cells) {
            task.fromSwatch.push_back(wayIn(place, cell));
            task.toNext.push_back(wayOut(place, cell));
        }
        PathBounds bounds = pathBounds(task, m_ways, rounds, m_prices[place]);
        bounds.whole = std::max(tree, bounds.whole);
        return bounds;
    }

    std::int64_t pickMs() const { return m_model.clickMs() + m_model.timing().settleMs; }

    /// The colour with two visits or more: one that paints none of its cells for the first time, or
    /// a path with cuts.
    std::int64_t twiceMs(std::size_t place, const PathBounds& free) const {
        std::int64_t idleVisit = kEndless;
        for (const std::vector<core::Point>& cells : m_cells) {
            for (const core::Point cell : cells) {
                idleVisit = std::min(idleVisit, wayIn(place, cell) + m_leastWayOut);
            }
        }
        const std::int64_t idle = free.whole + pickMs() + idleVisit;
        const std::int64_t cut = std::max(free.whole + visitMs(), free.cut.value_or(0));
        return m_cells[place].size() < 2 ? idle : std::min(idle, cut);
    }

    core::Result<void> boundPaths() {
        for (std::size_t place = 0; place < m_cells.size(); ++place) {
            if (m_progress.stopRequested()) return stopped();
            const PathBounds free = pathOf(place, 0, kRounds);
            m_freeMs.push_back(free.whole);
            m_twiceMs.push_back(twiceMs(place, free));
        }
        return {};
    }

    /// What every colour costs behind every set of others, by its tree and its path where all may
    /// be passed.
    core::Result<void> plantTrees() {
        const std::size_t count = m_cells.size();
        m_orders.emplace(count);
        m_exact.assign(count, std::vector<bool>(std::size_t{1} << count));
        for (std::size_t place = 0; place < count; ++place) {
            m_progress.tell(static_cast<std::int64_t>(place), static_cast<std::int64_t>(count),
                            "proving the bound");
            m_orders->raise(place, 0, m_freeMs[place]);
            m_exact[place][0] = true;
            for (Subset drawn = 1; drawn < Subset{1} << count; ++drawn) {
                if (m_progress.stopRequested()) return stopped();
                if (!holds(drawn, place)) m_orders->raiseAt(place, drawn, treeMs(place, drawn));
            }
        }
        return {};
    }

    /// With the colours of `drawn` no longer passable.
    std::int64_t treeMs(std::size_t place, Subset drawn) {
        ColourSet later;
        for (std::size_t i = 0; i < m_cells.size(); ++i) {
            if (!holds(drawn, i)) later.set(m_trees.colours()[i]);
        }
        return m_treeEndsMs[place] + m_trees.measured(m_trees.colours()[place], later);
    }

    /// The cheapest order, where colours of several visits cost `leftOut`. As long as paths on it
    /// were not bounded by themselves, that is done, and the order sought anew.
    core::Result<std::int64_t> bestOrder(const std::vector<std::int64_t>& leftOut) {
        const std::int64_t mostWork = m_work + kMostWork;
        for (;;) {
            if (m_progress.stopRequested()) return stopped();
            const CheapestOrder::Found found = m_orders->cheapest(leftOut);
            bool isExact = true;
            for (const auto& [place, drawn] : found.steps) {
                if (m_exact[place][drawn] || m_work >= mostWork) continue;
                m_exact[place][drawn] = true;
                m_orders->raise(place, drawn, pathOf(place, drawn, kRoundsAgain).whole);
                isExact = false;
            }
            if (isExact) return found.cost;
        }
    }

    const DrawingRequest& m_request;
    const core::Progress& m_progress;
    TimeModel m_model;
    PenWays m_ways;
    LeastTree m_trees;
    std::vector<core::Point> m_swatches;
    std::vector<std::vector<core::Point>> m_cells;  ///< By place of the colour.
    std::vector<std::int64_t> m_treeEndsMs;
    std::int64_t m_longestLastWay = 0;
    std::int64_t m_leastWayOut = kEndless;  ///< From any painted cell to any swatch.
    std::vector<std::int64_t> m_freeMs;     ///< By place, with all painted cells passable.
    std::vector<std::int64_t> m_twiceMs;    ///< The same, for two visits or more.
    std::vector<std::vector<std::int64_t>> m_prices;  ///< By place, those that served best so far.
    std::optional<CheapestOrder> m_orders;
    std::vector<std::vector<bool>> m_exact;  ///< By place and what was drawn before.
    std::int64_t m_work = 0;
};

/// The model's cases in which the proof holds.
bool isProvable(const DrawingRequest& request) {
    const TimeModel model(request.canvas, request.timing);
    // A jump paints cells that are no neighbours, and a fill all of them.
    const bool jumps =
        request.canvas.penModel == core::PenModel::Sampled && model.jumpStep() > model.cellPitch();
    return request.canvas.penModel != core::PenModel::Lines && !jumps && !canFill(request) &&
           model.stepDown() == model.cellPitch() && model.stepDown() <= model.stepUp();
}

}  // namespace

core::Result<ProvenBounds> provenBounds(const DrawingRequest& request,
                                        const core::Progress& progress) {
    const std::int64_t cheap = lowerBoundMs(request);
    if (cheap == 0 || !isProvable(request)) return ProvenBounds{cheap, cheap};
    Prover prover(request, progress);
    PANTILE_ASSIGN_OR_RETURN(const ProvenBounds strong, prover.bounds());
    const bool knowsVisits = prover.visitMs() >= 0;
    return ProvenBounds{std::max(cheap, knowsVisits ? strong.everyPlan : cheap),
                        std::max(cheap, strong.pickedOnce)};
}

}  // namespace pantile::drawing
