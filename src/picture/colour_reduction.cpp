#include "picture/colour_reduction.h"

#include <algorithm>
#include <cstdint>
#include <limits>
#include <optional>
#include <vector>

#include "core/range_check.h"
#include "picture/cell_difference.h"

namespace pantile::picture {
namespace {

using core::Grid;
using core::Palette;
using core::PaletteIndex;
using core::Rgb8;

constexpr std::int64_t kNoDistance = std::numeric_limits<std::int64_t>::max();

// The colours that are left for the cells of one entry.
struct NearestKept {
    PaletteIndex first = 0;
    std::int64_t firstSquared = kNoDistance;
    std::int64_t secondSquared = kNoDistance;  // what it would be without the first
};

// The painted entries that stay, and what it would cost to do without one of them.
class StayingColours {
public:
    StayingColours(const Grid& grid, const Palette& palette)
        : m_difference(palette),
          m_cells(static_cast<std::size_t>(palette.size()), 0),
          m_nearest(m_cells.size()) {
        for (const PaletteIndex index : grid.cells()) ++m_cells[index];
        for (int i = 0; i < palette.size(); ++i) {
            const auto index = static_cast<PaletteIndex>(i);
            if (m_cells[index] > 0 && index != palette.transparent()) m_staying.push_back(index);
        }
        m_painted = m_staying;
        findNearest();
    }

    const std::vector<PaletteIndex>& staying() const { return m_staying; }

    /// The entry that stays for the cells of this one.
    PaletteIndex standIn(PaletteIndex index) const { return m_nearest[index].first; }

    void dropCheapest() {
        std::vector<std::int64_t> costs(m_cells.size(), 0);
        for (const PaletteIndex index : m_painted) {
            const NearestKept& nearest = m_nearest[index];
            costs[nearest.first] += m_cells[index] * (nearest.secondSquared - nearest.firstSquared);
        }
        // From the end: of equals the higher index goes.
        const auto cheapest = std::min_element(
            m_staying.rbegin(), m_staying.rend(),
            [&costs](PaletteIndex p, PaletteIndex q) { return costs[p] < costs[q]; });
        m_staying.erase(std::next(cheapest).base());
        findNearest();
    }

private:
    void findNearest() {
        for (const PaletteIndex index : m_painted) {
            NearestKept nearest;
            for (const PaletteIndex other : m_staying) {
                const std::int64_t squared = m_difference.squared(index, other);
                if (squared < nearest.firstSquared) {
                    nearest = {other, squared, nearest.firstSquared};
                } else {
                    nearest.secondSquared = std::min(nearest.secondSquared, squared);
                }
            }
            m_nearest[index] = nearest;
        }
    }

    CellDifference m_difference;
    std::vector<std::int64_t> m_cells;    // of each entry
    std::vector<PaletteIndex> m_painted;  // with cells
    std::vector<PaletteIndex> m_staying;  // of those
    std::vector<NearestKept> m_nearest;   // for each painted entry
};

bool hasUnpainted(const Grid& grid, const Palette& palette) {
    const auto cells = grid.cells();
    return palette.transparent() &&
           std::find(cells.begin(), cells.end(), *palette.transparent()) != cells.end();
}

// Only the entries of `staying`, in their order, and the grid that means the same in them.
core::Result<Converted> packed(const Grid& grid, const Palette& palette,
                               const std::vector<PaletteIndex>& staying,
                               const std::vector<PaletteIndex>& standIns) {
    std::vector<Rgb8> colours;
    std::optional<PaletteIndex> transparent;
    std::vector<PaletteIndex> places(static_cast<std::size_t>(palette.size()), 0);
    for (const PaletteIndex index : staying) {
        places[index] = static_cast<PaletteIndex>(colours.size());
        if (palette.transparent() == index) transparent = places[index];
        colours.push_back(palette[index]);
    }
    if (colours.size() == 1) colours.push_back(colours.front());
    std::vector<PaletteIndex> cells;
    cells.reserve(grid.cellCount());
    for (const PaletteIndex index : grid.cells()) cells.push_back(places[standIns[index]]);
    PANTILE_ASSIGN_OR_RETURN(Palette reduced, Palette::create(std::move(colours), transparent));
    PANTILE_ASSIGN_OR_RETURN(Grid mapped,
                             Grid::create(grid.width(), grid.height(), std::move(cells)));
    return Converted{std::move(mapped), std::move(reduced)};
}

}  // namespace

core::Result<Converted> reduceColours(const Grid& grid, const Palette& palette, int count) {
    PANTILE_RETURN_IF_ERROR(core::checkRange("the number of colours", count,
                                             core::kMinPaletteColours, core::kMaxPaletteColours));
    PANTILE_RETURN_IF_ERROR(
        core::checkRange("the grid's largest index", grid.largestIndex(), 0, palette.size() - 1));
    const bool unpainted = hasUnpainted(grid, palette);
    const std::size_t most = static_cast<std::size_t>(count) - (unpainted ? 1 : 0);
    StayingColours colours(grid, palette);
    while (colours.staying().size() > most) colours.dropCheapest();
    std::vector<PaletteIndex> staying = colours.staying();
    std::vector<PaletteIndex> standIns;
    standIns.reserve(static_cast<std::size_t>(palette.size()));
    for (int i = 0; i < palette.size(); ++i)
        standIns.push_back(colours.standIn(static_cast<PaletteIndex>(i)));
    if (unpainted) {
        const PaletteIndex transparent = *palette.transparent();
        staying.insert(std::lower_bound(staying.begin(), staying.end(), transparent), transparent);
        standIns[transparent] = transparent;
    }
    return packed(grid, palette, staying, standIns);
}

}  // namespace pantile::picture
