// provenBoundMs: the proof, with the same letters, is in docs/drawing.md section 6.2.

#include "drawing/proven_bound.h"

#include <algorithm>
#include <limits>
#include <vector>

#include "drawing/fill.h"
#include "drawing/least_tree.h"
#include "drawing/path_bound.h"
#include "drawing/planner.h"
#include "drawing/timing.h"

namespace pantile::drawing {
namespace {

using core::PaletteIndex;

constexpr std::size_t kMostColoursInOrder = 16;  ///< Their subsets are gone through one by one.
constexpr std::size_t kMostCellsForPaths = 1500;
constexpr int kRounds = 120;
constexpr int kRoundsWithout = 40;
constexpr std::int64_t kEndless = std::numeric_limits<std::int64_t>::max() / 4;

/// Which of the painted colours, by their places in the list.
using Subset = std::uint32_t;

bool holds(Subset set, std::size_t place) {
    return (set >> place & 1U) != 0;
}

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
          m_treeEndsMs(m_trees.colours().size()) {
        listCells();
        for (std::size_t place = 0; place < m_cells.size(); ++place) measureEnds(place);
    }

    /// What an additional visit of a colour adds at the least to a path through all its cells.
    std::int64_t visitMs() const { return pickMs() - spanMs(m_swatches, m_model); }

    core::Result<std::int64_t> bound() {
        PANTILE_RETURN_IF_ERROR(boundPaths());
        std::int64_t least = 0;
        for (const std::int64_t ms : m_freeMs) least += ms;
        if (m_cells.size() > 1 && m_cells.size() <= kMostColoursInOrder) {
            PANTILE_ASSIGN_OR_RETURN(const std::int64_t ordered, bestOrder());
            least = std::max(least, ordered);
        }
        const auto picks = static_cast<std::int64_t>(m_cells.size()) * pickMs();
        return firstWayMs() + picks + least - m_longestLastWay;
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
        PathBounds bounds = pathBounds(task, m_ways, rounds);
        bounds.whole = std::max(tree, bounds.whole);
        return bounds;
    }

    std::int64_t pathMs(std::size_t place, Subset blocked, int rounds) {
        return pathOf(place, blocked, rounds).whole;
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
        const std::size_t count = m_cells.size();
        const bool ordered = count <= kMostColoursInOrder;
        for (std::size_t place = 0; place < count; ++place) {
            if (m_progress.stopRequested()) return stopped();
            const PathBounds free = pathOf(place, 0, kRounds);
            m_freeMs.push_back(free.whole);
            m_twiceMs.push_back(twiceMs(place, free));
            m_withoutMs.emplace_back();
            if (!ordered) continue;
            const Subset others = ((Subset{1} << count) - 1) & ~(Subset{1} << place);
            m_lastMs.push_back(std::max(m_freeMs[place], pathMs(place, others, kRounds)));
            for (std::size_t other = 0; other < count; ++other) {
                const bool same = other == place;
                m_withoutMs[place].push_back(
                    same ? 0 : pathMs(place, Subset{1} << other, kRoundsWithout));
            }
        }
        return {};
    }

    /// What the colour at `place` costs once those of `drawn` may not be passed any more.
    std::int64_t costAfter(std::size_t place, Subset drawn) {
        const std::size_t count = m_cells.size();
        ColourSet later;
        std::int64_t most = m_freeMs[place];
        Subset others = 0;
        for (std::size_t i = 0; i < count; ++i) {
            if (i == place) continue;
            others |= Subset{1} << i;
            if (holds(drawn, i)) {
                most = std::max(most, m_withoutMs[place][i]);
            } else {
                later.set(m_trees.colours()[i]);
            }
        }
        if (drawn == others) most = std::max(most, m_lastMs[place]);
        const std::int64_t tree = m_trees.measured(m_trees.colours()[place], later);
        return std::max(most, m_treeEndsMs[place] + tree);
    }

    /// Over every set of colours that are picked once, and every order of them.
    core::Result<std::int64_t> bestOrder() {
        const std::size_t count = m_cells.size();
        const Subset subsets = Subset{1} << count;
        std::vector<std::int64_t> costs(subsets, kEndless);
        costs[0] = 0;
        std::int64_t best = kEndless;
        for (Subset drawn = 0; drawn < subsets; ++drawn) {
            if (m_progress.stopRequested()) return stopped();
            m_progress.tell(drawn, subsets, "proving the bound");
            std::int64_t whole = costs[drawn];
            for (std::size_t place = 0; place < count; ++place) {
                if (holds(drawn, place)) continue;
                whole += m_twiceMs[place];
                std::int64_t& next = costs[drawn | Subset{1} << place];
                next = std::min(next, costs[drawn] + costAfter(place, drawn));
            }
            best = std::min(best, whole);
        }
        return best;
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
    std::vector<std::int64_t> m_lastMs;     ///< With its own alone.
    std::vector<std::vector<std::int64_t>> m_withoutMs;  ///< With all but those of another place.
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

core::Result<std::int64_t> provenBoundMs(const DrawingRequest& request,
                                         const core::Progress& progress) {
    const std::int64_t cheap = lowerBoundMs(request);
    if (cheap == 0 || !isProvable(request)) return cheap;
    Prover prover(request, progress);
    if (prover.visitMs() < 0) return cheap;
    PANTILE_ASSIGN_OR_RETURN(const std::int64_t strong, prover.bound());
    return std::max(cheap, strong);
}

}  // namespace pantile::drawing
