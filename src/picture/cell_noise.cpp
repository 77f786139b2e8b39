#include "picture/cell_noise.h"

#include <algorithm>
#include <utility>

#include "core/range_check.h"
#include "core/split_mix.h"

namespace pantile::picture {
namespace {

using core::Grid;
using core::PaletteIndex;

std::vector<PaletteIndex> sortedOnce(std::vector<PaletteIndex> colours) {
    std::sort(colours.begin(), colours.end());
    colours.erase(std::unique(colours.begin(), colours.end()), colours.end());
    return colours;
}

// Offsets in reading order of the cells that have one of the colours.
std::vector<int> cellsOf(const Grid& grid, const std::vector<PaletteIndex>& colours) {
    std::vector<int> found;
    for (int cell = 0; cell < static_cast<int>(grid.cellCount()); ++cell) {
        if (std::binary_search(colours.begin(), colours.end(),
                               grid.cells()[static_cast<std::size_t>(cell)]))
            found.push_back(cell);
    }
    return found;
}

PaletteIndex another(PaletteIndex colour, const std::vector<PaletteIndex>& colours,
                     core::SplitMix64& numbers) {
    const auto place = numbers.placeIn(colours.size() - 1);
    // The last one stands in for the colour itself, so that all others are equally likely.
    return colours[place] == colour ? colours.back() : colours[place];
}

core::Result<void> check(const Grid& grid, const core::Palette& palette, int percent,
                         const std::vector<PaletteIndex>& colours) {
    PANTILE_RETURN_IF_ERROR(core::checkRange("the percentage of noise", percent, 0, 100));
    PANTILE_RETURN_IF_ERROR(
        core::checkRange("the grid's largest index", grid.largestIndex(), 0, palette.size() - 1));
    PANTILE_RETURN_IF_ERROR(core::checkRange("the number of colours for noise",
                                             static_cast<std::int64_t>(colours.size()), 2,
                                             core::kMaxPaletteColours));
    return core::checkRange("the largest colour for noise", colours.back(), 0, palette.size() - 1);
}

}  // namespace

core::Result<Grid> withCellNoise(const Grid& grid, const core::Palette& palette,
                                 const NoiseOptions& options) {
    const std::vector<PaletteIndex> colours = sortedOnce(options.colours);
    PANTILE_RETURN_IF_ERROR(check(grid, palette, options.percent, colours));
    std::vector<int> cells = cellsOf(grid, colours);
    const std::size_t wanted =
        (cells.size() * static_cast<std::size_t>(options.percent) + 50) / 100;
    Grid noisy = grid;
    core::SplitMix64 numbers(options.seed);
    // The first steps of a Fisher-Yates shuffle: every choice of cells is equally likely.
    for (std::size_t i = 0; i < wanted; ++i) {
        std::swap(cells[i], cells[i + numbers.placeIn(cells.size() - i)]);
        const int x = cells[i] % grid.width();
        const int y = cells[i] / grid.width();
        noisy.set(x, y, another(grid.at(x, y), colours, numbers));
    }
    return noisy;
}

}  // namespace pantile::picture
