#include "picture/seam_healing.h"

#include <algorithm>
#include <limits>
#include <optional>
#include <vector>

#include "core/progress.h"
#include "core/range_check.h"
#include "picture/boundary_cut.h"

namespace pantile::picture {
namespace {

using core::Grid;
using core::PaletteIndex;

Grid transposed(const Grid& grid) {
    std::vector<PaletteIndex> cells;
    cells.reserve(grid.cellCount());
    for (int x = 0; x < grid.width(); ++x) {
        for (int y = 0; y < grid.height(); ++y) cells.push_back(grid.at(x, y));
    }
    return *Grid::create(grid.height(), grid.width(), std::move(cells));
}

// Over the cells that meet at a seam.
struct SeamSums {
    std::int64_t distances = 0;
    std::int64_t squares = 0;
};

SeamSums sumsAcross(Seam seam, const Grid& grid, const CellDifference& difference) {
    SeamSums sums;
    const auto add = [&](int /*place*/, PaletteIndex p, PaletteIndex q) {
        sums.distances += difference.distance(p, q);
        sums.squares += difference.squared(p, q);
    };
    visitNeighbours(grid, seam, add, [](PaletteIndex /*p*/, PaletteIndex /*q*/) {});
    return sums;
}

// Over the cells that lie side by side in the rows, all but those at the vertical seam.
std::int64_t insideSum(const Grid& grid, const CellDifference& difference) {
    std::int64_t sum = 0;
    visitNeighbours(
        grid, Seam::Vertical, [](int /*place*/, PaletteIndex /*p*/, PaletteIndex /*q*/) {},
        [&](PaletteIndex p, PaletteIndex q) { sum += difference.distance(p, q); });
    return sum;
}

// A strip of the grid laid over its vertical seam. Columns of the band are counted from `overlap`
// left of the seam; band column i would show grid column source + i.
struct Strip {
    int source = 0;
    BoundaryCut left;   // its first columns in the band
    BoundaryCut right;  // its last columns, counted from the seam
};

// How large the sum at the other seam may become; nothing: it may rise by what this one's falls.
using OtherMost = std::optional<std::int64_t>;

// Heals the vertical seam of one grid.
class VerticalHealing {
public:
    VerticalHealing(const Grid& grid, const CellDifference& difference, int overlap,
                    const std::stop_token& stop)
        : m_grid(grid),
          m_difference(difference),
          m_overlap(overlap),
          m_before(seamSum(grid, difference, Seam::Vertical)),
          m_stop(stop) {}

    // As smooth as the inside: the means are compared without dividing.
    bool isSmooth() const {
        return m_before * (m_grid.width() - 1) <= insideSum(m_grid, m_difference);
    }

    // The best of all strips, if there is one that keeps the other seam's sum within bounds.
    std::optional<Grid> best(OtherMost otherMost) const {
        const std::int64_t otherBefore = seamSum(m_grid, m_difference, Seam::Horizontal);
        std::optional<Grid> best;
        std::int64_t least = std::numeric_limits<std::int64_t>::max();
        for (int source = 0; source + 2 * m_overlap <= m_grid.width(); ++source) {
            if (m_stop.stop_requested()) break;
            const std::optional<Strip> strip = stripFrom(source, least);
            if (!strip) continue;
            Grid healed = covered(*strip);
            const SeamSums own = sumsAcross(Seam::Vertical, healed, m_difference);
            const SeamSums other = sumsAcross(Seam::Horizontal, healed, m_difference);
            // A strip must not trade the seam for two joints that are seen as much.
            const std::int64_t gain = m_before - own.distances;
            if (gain <= 0 || other.distances > otherMost.value_or(otherBefore + gain) ||
                jointSum(*strip, healed) > 2 * m_before)
                continue;
            const std::int64_t seen =
                strip->left.error + strip->right.error + own.squares + other.squares;
            if (seen >= least) continue;
            least = seen;
            best = std::move(healed);
        }
        return best;
    }

private:
    int gridColumn(int bandColumn) const {
        return (m_grid.width() - m_overlap + bandColumn) % m_grid.width();
    }

    std::optional<BoundaryCut> cutFrom(int source, int firstBandColumn, std::int64_t below) const {
        std::vector<std::int64_t> errors;
        for (int y = 0; y < m_grid.height(); ++y) {
            for (int i = firstBandColumn; i < firstBandColumn + m_overlap; ++i) {
                errors.push_back(
                    m_difference.squared(m_grid.at(gridColumn(i), y), m_grid.at(source + i, y)));
            }
        }
        return closedBoundaryCut(errors, {m_overlap, m_grid.height()}, below);
    }

    // Nothing if its cuts alone are seen as much as `below`.
    std::optional<Strip> stripFrom(int source, std::int64_t below) const {
        const auto left = cutFrom(source, 0, below);
        if (!left) return std::nullopt;
        const auto right = cutFrom(source, m_overlap, below - left->error);
        if (!right) return std::nullopt;
        return Strip{source, *left, *right};
    }

    int firstColumn(const Strip& strip, int row) const {
        return strip.left.columns[static_cast<std::size_t>(row)];
    }

    int lastColumn(const Strip& strip, int row) const {
        return m_overlap + strip.right.columns[static_cast<std::size_t>(row)];
    }

    Grid covered(const Strip& strip) const {
        Grid healed = m_grid;
        for (int y = 0; y < m_grid.height(); ++y) {
            for (int i = firstColumn(strip, y); i <= lastColumn(strip, y); ++i)
                healed.set(gridColumn(i), y, m_grid.at(strip.source + i, y));
        }
        return healed;
    }

    // Over the cells that meet where the strip ends, row by row.
    std::int64_t jointSum(const Strip& strip, const Grid& healed) const {
        std::int64_t sum = 0;
        const auto step = [&](int bandColumn, int y) {
            return m_difference.distance(healed.at(gridColumn(bandColumn), y),
                                         healed.at(gridColumn(bandColumn + 1), y));
        };
        for (int y = 0; y < m_grid.height(); ++y)
            sum += step(firstColumn(strip, y) - 1, y) + step(lastColumn(strip, y), y);
        return sum;
    }

    const Grid& m_grid;
    const CellDifference& m_difference;
    int m_overlap;
    std::int64_t m_before;
    const std::stop_token& m_stop;
};

struct Overlaps {
    int columns = 1;  // beside the vertical seam
    int rows = 1;     // beside the horizontal seam
};

// Heals the seams of a grid. When asked to stop, what it returns is of no use.
class Healing {
public:
    Healing(const core::Palette& palette, Overlaps overlaps, const std::stop_token& stop)
        : m_difference(palette), m_overlaps(overlaps), m_stop(stop) {}

    Grid vertical(const Grid& grid, OtherMost otherMost) const {
        return verticalWithin(grid, m_overlaps.columns, otherMost);
    }

    Grid horizontal(const Grid& grid, OtherMost otherMost) const {
        return transposed(verticalWithin(transposed(grid), m_overlaps.rows, otherMost));
    }

    // So that neither becomes worse. The first strip may spoil a horizontal seam that is healed
    // next anyway; if that comes out worse than it was, no strip may.
    Grid both(const Grid& grid) const {
        const Most most{seamSum(grid, m_difference, Seam::Vertical),
                        seamSum(grid, m_difference, Seam::Horizontal)};
        const Grid healed = rounds(grid, most, std::nullopt);
        const bool noWorse = seamSum(healed, m_difference, Seam::Vertical) <= most.vertical &&
                             seamSum(healed, m_difference, Seam::Horizontal) <= most.horizontal;
        return noWorse ? healed : rounds(grid, most, most.horizontal);
    }

private:
    // What the seams' sums may become.
    struct Most {
        std::int64_t vertical = 0;
        std::int64_t horizontal = 0;
    };

    Grid verticalWithin(const Grid& grid, int overlap, OtherMost otherMost) const {
        const VerticalHealing healing(grid, m_difference, overlap, m_stop);
        if (healing.isSmooth()) return grid;
        return healing.best(otherMost).value_or(grid);
    }

    // The second round is for a vertical seam that every strip would have healed at the other's
    // cost.
    Grid rounds(const Grid& grid, const Most& most, OtherMost first) const {
        const Grid once = horizontal(vertical(grid, first), most.vertical);
        return horizontal(vertical(once, most.horizontal), most.vertical);
    }

    CellDifference m_difference;
    Overlaps m_overlaps;
    const std::stop_token& m_stop;
};

core::Result<int> overlapFor(int side, const HealOptions& options) {
    if (options.overlap == 0) return std::max(1, side / 8);
    PANTILE_RETURN_IF_ERROR(
        core::checkRange("the overlap", options.overlap, 0, std::max(1, side / 2)));
    return options.overlap;
}

core::Result<Overlaps> overlapsFor(const Grid& grid, const HealOptions& options) {
    Overlaps overlaps;
    if (options.seams != HealedSeams::Horizontal) {
        PANTILE_ASSIGN_OR_RETURN(overlaps.columns, overlapFor(grid.width(), options));
    }
    if (options.seams != HealedSeams::Vertical) {
        PANTILE_ASSIGN_OR_RETURN(overlaps.rows, overlapFor(grid.height(), options));
    }
    return overlaps;
}

}  // namespace

std::int64_t seamSum(const Grid& grid, const CellDifference& difference, Seam seam) {
    return sumsAcross(seam, grid, difference).distances;
}

core::Result<Grid> healSeams(const Grid& grid, const core::Palette& palette,
                             const HealOptions& options, const std::stop_token& stop) {
    PANTILE_RETURN_IF_ERROR(
        core::checkRange("the grid's largest index", grid.largestIndex(), 0, palette.size() - 1));
    PANTILE_ASSIGN_OR_RETURN(const Overlaps overlaps, overlapsFor(grid, options));
    const Healing healing(palette, overlaps, stop);
    Grid healed = grid;
    switch (options.seams) {
        case HealedSeams::Vertical:
            healed = healing.vertical(grid, std::nullopt);
            break;
        case HealedSeams::Horizontal:
            healed = healing.horizontal(grid, std::nullopt);
            break;
        case HealedSeams::Both:
            healed = healing.both(grid);
            break;
    }
    if (stop.stop_requested()) return core::stoppedError();
    return healed;
}

}  // namespace pantile::picture
