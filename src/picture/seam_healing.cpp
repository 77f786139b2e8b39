#include "picture/seam_healing.h"

#include <algorithm>
#include <optional>
#include <vector>

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

// Heals the vertical seam of one grid.
class VerticalHealing {
public:
    VerticalHealing(const Grid& grid, const CellDifference& difference, int overlap)
        : m_grid(grid),
          m_difference(difference),
          m_overlap(overlap),
          m_before(seamSum(grid, difference, Seam::Vertical)) {}

    // As smooth as the inside: the means are compared without dividing.
    bool isSmooth() const {
        return m_before * (m_grid.width() - 1) <= insideSum(m_grid, m_difference);
    }

    // The best of all strips, if there is one that leaves the other seam's sum within `otherMost`.
    std::optional<Grid> best(std::int64_t otherMost) const {
        std::optional<Grid> best;
        std::int64_t least = 0;
        for (int source = 0; source + 2 * m_overlap <= m_grid.width(); ++source) {
            const Strip strip = stripFrom(source);
            Grid healed = covered(strip);
            const SeamSums own = sumsAcross(Seam::Vertical, healed, m_difference);
            const SeamSums other = sumsAcross(Seam::Horizontal, healed, m_difference);
            // A strip must not trade the seam for two joints that are seen as much.
            if (own.distances >= m_before || other.distances > otherMost ||
                jointSum(strip, healed) > 2 * m_before)
                continue;
            const std::int64_t seen =
                strip.left.error + strip.right.error + own.squares + other.squares;
            if (best && seen >= least) continue;
            least = seen;
            best = std::move(healed);
        }
        return best;
    }

private:
    int gridColumn(int bandColumn) const {
        return (m_grid.width() - m_overlap + bandColumn) % m_grid.width();
    }

    BoundaryCut cutFrom(int source, int firstBandColumn) const {
        std::vector<std::int64_t> errors;
        for (int y = 0; y < m_grid.height(); ++y) {
            for (int i = firstBandColumn; i < firstBandColumn + m_overlap; ++i) {
                errors.push_back(
                    m_difference.squared(m_grid.at(gridColumn(i), y), m_grid.at(source + i, y)));
            }
        }
        return closedBoundaryCut(errors, {m_overlap, m_grid.height()});
    }

    Strip stripFrom(int source) const {
        return {source, cutFrom(source, 0), cutFrom(source, m_overlap)};
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
};

Grid healVertical(const Grid& grid, const CellDifference& difference, int overlap,
                  std::int64_t otherMost) {
    const VerticalHealing healing(grid, difference, overlap);
    if (healing.isSmooth()) return grid;
    return healing.best(otherMost).value_or(grid);
}

core::Result<int> overlapFor(int side, const HealOptions& options) {
    if (options.overlap == 0) return std::max(1, side / 8);
    PANTILE_RETURN_IF_ERROR(
        core::checkRange("the overlap", options.overlap, 0, std::max(1, side / 2)));
    return options.overlap;
}

}  // namespace

std::int64_t seamSum(const Grid& grid, const CellDifference& difference, Seam seam) {
    return sumsAcross(seam, grid, difference).distances;
}

core::Result<Grid> healSeams(const Grid& grid, const core::Palette& palette,
                             const HealOptions& options) {
    PANTILE_RETURN_IF_ERROR(
        core::checkRange("the grid's largest index", grid.largestIndex(), 0, palette.size() - 1));
    const CellDifference difference(palette);
    // Healing one seam may use up what the other gained, but never more.
    const std::int64_t verticalMost = seamSum(grid, difference, Seam::Vertical);
    const std::int64_t horizontalMost = seamSum(grid, difference, Seam::Horizontal);
    Grid healed = grid;
    if (options.seams != HealedSeams::Horizontal) {
        PANTILE_ASSIGN_OR_RETURN(const int overlap, overlapFor(grid.width(), options));
        healed = healVertical(healed, difference, overlap, horizontalMost);
    }
    if (options.seams != HealedSeams::Vertical) {
        PANTILE_ASSIGN_OR_RETURN(const int overlap, overlapFor(grid.height(), options));
        healed = transposed(healVertical(transposed(healed), difference, overlap, verticalMost));
    }
    return healed;
}

}  // namespace pantile::picture
