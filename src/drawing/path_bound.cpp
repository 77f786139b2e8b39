#include "drawing/path_bound.h"

#include <algorithm>
#include <limits>

namespace pantile::drawing {
namespace {

/// Times are multiplied by this, so that prices can be parts of a millisecond.
constexpr std::int64_t kScale = 256;
constexpr std::int64_t kFarAway = std::numeric_limits<std::int64_t>::max();
constexpr int kPatience = 8;  ///< Rounds without a better bound before prices change more slowly.

/// The least time between any two of a colour's cells.
class CellDistances {
public:
    CellDistances(const PathTask& task, const PenWays& ways)
        : m_count(task.cells.size()), m_scaled(m_count * m_count) {
        std::vector<std::int32_t> steps(task.passable.size(), -1);
        std::vector<core::Point> queue;
        for (std::size_t i = 0; i < m_count; ++i) {
            search(task.cells[i], task.passable, ways, steps, queue);
            for (std::size_t j = 0; j < m_count; ++j) {
                m_scaled[i * m_count + j] = kScale * timeTo(task, ways, steps, i, j);
            }
            for (const core::Point cell : queue) steps[cellOffset(cell, ways.grid)] = -1;
        }
    }

    std::int64_t between(std::size_t i, std::size_t j) const { return m_scaled[i * m_count + j]; }

private:
    /// Breadth first as far as a drag can be quicker than the longest lift.
    static void search(core::Point from, const std::vector<std::uint8_t>& passable,
                       const PenWays& ways, std::vector<std::int32_t>& steps,
                       std::vector<core::Point>& queue) {
        queue.assign(1, from);
        steps[cellOffset(from, ways.grid)] = 0;
        for (std::size_t head = 0; head < queue.size(); ++head) {
            const std::int32_t here = steps[cellOffset(queue[head], ways.grid)];
            if (here * ways.stepMs >= ways.liftMs.back()) return;
            forEachNeighbour(queue[head], ways, [&](core::Point next) {
                const std::size_t offset = cellOffset(next, ways.grid);
                if (passable[offset] == 0 || steps[offset] >= 0) return;
                steps[offset] = here + 1;
                queue.push_back(next);
            });
        }
    }

    static std::int64_t timeTo(const PathTask& task, const PenWays& ways,
                               const std::vector<std::int32_t>& steps, std::size_t i,
                               std::size_t j) {
        const int side = longerSide(task.cells[i], task.cells[j]);
        const std::int64_t lifted = ways.liftMs[static_cast<std::size_t>(side)];
        const std::int32_t dragged = steps[cellOffset(task.cells[j], ways.grid)];
        return dragged < 0 ? lifted : std::min(lifted, dragged * ways.stepMs);
    }

    std::size_t m_count;
    std::vector<std::int64_t> m_scaled;
};

/// Prices on cells: a cell that a least tree uses too often gets dearer, one too seldom cheaper.
/// The sum that a path pays for its cells is known, as it goes in and out of each once.
class PricedTrees {
public:
    /// Shape: a price for each cell, or none at all.
    PricedTrees(const PathTask& task, const PenWays& ways, const std::vector<std::int64_t>& prices)
        : m_task(task),
          m_distances(task, ways),
          m_count(task.cells.size()),
          m_prices(prices),
          m_excess(m_count),
          m_excessBefore(m_count) {
        m_prices.resize(m_count);
    }

    const std::vector<std::int64_t>& prices() const { return m_prices; }

    /// The tree, its way in and its way out under the present prices, less the prices paid.
    std::int64_t bound() {
        std::fill(m_excess.begin(), m_excess.end(), -2);
        std::int64_t total = tree() + cheapestEnd(m_task.fromSwatch) + cheapestEnd(m_task.toNext);
        for (const std::int64_t price : m_prices) total -= 2 * price;
        return total;
    }

    /// What at the least the last bound grows by if links are cuts: a forest of two trees is the
    /// tree without its longest link. None if more cuts could be better than one.
    std::optional<std::int64_t> cutGain() const {
        if (m_count < 2) return std::nullopt;
        std::vector<std::int64_t> prices = m_prices;
        std::nth_element(prices.begin(), prices.begin() + 1, prices.end());
        const std::int64_t gain = kScale * m_task.cutMs + prices[0] + prices[1] - m_longestLink;
        if (gain < 0) return std::nullopt;
        return gain;
    }

    /// Whether any price changes at all.
    bool reprice(std::int64_t step) {
        bool changes = false;
        for (std::size_t i = 0; i < m_count; ++i) {
            changes = changes || m_excess[i] != 0;
            m_prices[i] += step * (7 * m_excess[i] + 3 * m_excessBefore[i]) / 10;
        }
        m_excessBefore = m_excess;
        return changes;
    }

private:
    /// Prim's least tree.
    std::int64_t tree() {
        std::vector<std::int64_t> nearest(m_count, kFarAway);
        std::vector<std::size_t> parent(m_count, m_count);
        std::vector<std::size_t> left(m_count);
        for (std::size_t i = 0; i < m_count; ++i) left[i] = i;
        std::int64_t total = 0;
        m_longestLink = std::numeric_limits<std::int64_t>::min();
        nearest[0] = 0;
        while (!left.empty()) {
            const auto best = std::min_element(
                left.begin(), left.end(),
                [&](std::size_t a, std::size_t b) { return nearest[a] < nearest[b]; });
            const std::size_t cell = *best;
            *best = left.back();
            left.pop_back();
            total += nearest[cell];
            if (parent[cell] != m_count) {
                m_longestLink = std::max(m_longestLink, nearest[cell]);
                ++m_excess[cell];
                ++m_excess[parent[cell]];
            }
            for (const std::size_t other : left) {
                const std::int64_t ms =
                    m_distances.between(cell, other) + m_prices[cell] + m_prices[other];
                if (ms >= nearest[other]) continue;
                nearest[other] = ms;
                parent[other] = cell;
            }
        }
        return total;
    }

    std::int64_t cheapestEnd(const std::vector<std::int64_t>& ends) {
        std::size_t best = 0;
        const auto cost = [&](std::size_t i) { return kScale * ends[i] + m_prices[i]; };
        for (std::size_t i = 1; i < m_count; ++i) {
            if (cost(i) < cost(best)) best = i;
        }
        ++m_excess[best];
        return cost(best);
    }

    const PathTask& m_task;
    CellDistances m_distances;
    std::size_t m_count;
    std::vector<std::int64_t> m_prices;
    std::vector<std::int64_t> m_excess;
    std::vector<std::int64_t> m_excessBefore;
    std::int64_t m_longestLink = 0;  ///< Of the last tree, with prices.
};

/// A path takes whole milliseconds, so what is left of one is rounded up.
std::int64_t wholeMs(std::int64_t scaled) {
    return (scaled + kScale - 1) / kScale;
}

}  // namespace

PathBounds pathBounds(const PathTask& task, const PenWays& ways, int rounds,
                      std::vector<std::int64_t>& prices) {
    PricedTrees trees(task, ways, prices);
    std::int64_t best = trees.bound();
    std::optional<std::int64_t> bestCut;
    const auto noteCut = [&](std::int64_t bound) {
        if (const auto gain = trees.cutGain())
            bestCut = std::max(bestCut.value_or(0), bound + *gain);
    };
    noteCut(best);
    std::int64_t step = kScale * ways.stepMs / 2;
    int sinceBest = 0;
    for (int round = 0; round < rounds && step > 0; ++round) {
        if (!trees.reprice(step)) break;
        const std::int64_t bound = trees.bound();
        noteCut(bound);
        sinceBest = bound > best ? 0 : sinceBest + 1;
        if (bound > best) {
            best = bound;
            prices = trees.prices();
        }
        if (sinceBest <= kPatience) continue;
        step = step * 7 / 10;
        sinceBest = 0;
    }
    PathBounds bounds{wholeMs(best), std::nullopt};
    if (bestCut) bounds.cut = wholeMs(*bestCut);
    return bounds;
}

}  // namespace pantile::drawing
