#include "picture/recolour.h"

#include <algorithm>
#include <vector>

#include "core/range_check.h"
#include "picture/nearest_colour.h"

namespace pantile::picture {
namespace {

using core::Grid;
using core::Palette;
using core::PaletteIndex;

// The entry of `wanted` for each entry of `palette`.
std::vector<PaletteIndex> entriesFor(const Palette& palette, const Palette& wanted) {
    const NearestColour nearest(wanted);
    std::vector<PaletteIndex> entries;
    for (const core::Rgb8 colour : palette.colours()) entries.push_back(nearest.find(colour));
    if (palette.transparent() && wanted.transparent())
        entries[*palette.transparent()] = *wanted.transparent();
    return entries;
}

core::Result<void> checkUnpainted(const Grid& grid, const Palette& palette, const Palette& wanted) {
    const auto cells = grid.cells();
    if (!palette.transparent() || wanted.transparent()) return {};
    const auto unpainted = std::find(cells.begin(), cells.end(), *palette.transparent());
    if (unpainted == cells.end()) return {};
    const auto offset = static_cast<int>(unpainted - cells.begin());
    return core::Error{core::ErrorKind::InvalidInput,
                       "the cell at column " + std::to_string(offset % grid.width()) + ", row " +
                           std::to_string(offset / grid.width()) +
                           " is unpainted, and the new palette has no transparent entry",
                       "choose a palette with a transparent entry, or paint the unpainted cells"};
}

}  // namespace

core::Result<Converted> recoloured(const Grid& grid, const Palette& palette,
                                   const Palette& wanted) {
    PANTILE_RETURN_IF_ERROR(
        core::checkRange("the grid's largest index", grid.largestIndex(), 0, palette.size() - 1));
    PANTILE_RETURN_IF_ERROR(checkUnpainted(grid, palette, wanted));
    const std::vector<PaletteIndex> entries = entriesFor(palette, wanted);
    std::vector<PaletteIndex> cells;
    cells.reserve(grid.cellCount());
    for (const PaletteIndex index : grid.cells()) cells.push_back(entries[index]);
    PANTILE_ASSIGN_OR_RETURN(Grid recoloured,
                             Grid::create(grid.width(), grid.height(), std::move(cells)));
    return Converted{std::move(recoloured), wanted};
}

}  // namespace pantile::picture
