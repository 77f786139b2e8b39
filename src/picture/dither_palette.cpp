#include "picture/dither_palette.h"

#include <algorithm>
#include <cassert>
#include <utility>

#include "core/palette.h"
#include "picture/cell_search.h"
#include "picture/dither.h"
#include "picture/palette_builder.h"

namespace pantile::picture {

namespace {

// A fixed number keeps the result the same whatever the machine's speed.
constexpr int kRounds = 6;

// The colours, and an entry for unpainted cells if there are such.
core::Result<core::Palette> paletteFor(const CellColours& wanted, std::vector<core::Rgb8> colours) {
    if (std::all_of(wanted.cells.begin(), wanted.cells.end(),
                    [](const auto& cell) { return cell.has_value(); }))
        return core::Palette::create(std::move(colours));
    const auto transparent = static_cast<core::PaletteIndex>(colours.size());
    colours.emplace_back();
    return core::Palette::create(std::move(colours), transparent);
}

}  // namespace

core::Result<std::vector<core::Rgb8>> coloursForDither(const CellColours& wanted,
                                                       const std::vector<core::Rgb8>& start,
                                                       std::size_t pinned, double strength,
                                                       const core::Progress& progress) {
    assert(pinned <= start.size());
    PANTILE_ASSIGN_OR_RETURN(const core::Palette palette, paletteFor(wanted, start));
    CellSearch search(wanted, palette, ditherToPalette(wanted, palette, kFloydSteinberg, strength),
                      strength);
    for (int round = 0; round < kRounds; ++round) {
        search.refresh();
        PANTILE_RETURN_IF_ERROR(search.improveCells(progress));
        for (std::size_t entry = pinned; entry < start.size(); ++entry)
            search.improveColour(static_cast<core::PaletteIndex>(entry));
    }
    std::vector<core::Rgb8> colours(start.begin(),
                                    start.begin() + static_cast<std::ptrdiff_t>(pinned));
    std::vector<core::Rgb8> moved;
    for (std::size_t entry = pinned; entry < start.size(); ++entry)
        moved.push_back(core::toRgb8(search.colours()[entry]));
    sortByLightness(moved);
    moved.erase(std::unique(moved.begin(), moved.end()), moved.end());
    colours.insert(colours.end(), moved.begin(), moved.end());
    return colours;
}

}  // namespace pantile::picture
