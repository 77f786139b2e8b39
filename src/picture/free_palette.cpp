#include "picture/free_palette.h"

#include <algorithm>
#include <cassert>
#include <set>
#include <string>
#include <utility>

#include "picture/dither_palette.h"
#include "picture/merge_alike.h"
#include "picture/palette_builder.h"

namespace pantile::picture {
namespace {

using core::Error;
using core::ErrorKind;
using core::Result;
using core::Rgb8;

std::vector<Rgb8> paintedColours(const CellColours& cells) {
    std::vector<Rgb8> painted;
    painted.reserve(cells.cells.size());
    for (const auto& cell : cells.cells) {
        if (cell) painted.push_back(core::toRgb8(*cell));
    }
    return painted;
}

bool areAllIn(const std::vector<Rgb8>& colours, const std::vector<Rgb8>& palette) {
    const std::set<Rgb8> entries(palette.begin(), palette.end());
    return std::all_of(colours.begin(), colours.end(),
                       [&entries](Rgb8 colour) { return entries.count(colour) > 0; });
}

Result<void> checkPinned(const std::vector<Rgb8>& pinned, int room) {
    for (auto colour = pinned.begin(); colour != pinned.end(); ++colour) {
        if (std::find(pinned.begin(), colour, *colour) != colour)
            return Error{ErrorKind::InvalidInput, core::toHex(*colour) + " is pinned twice",
                         "pin each colour once"};
    }
    if (std::ssize(pinned) <= room) return {};
    return Error{ErrorKind::InvalidInput,
                 std::to_string(pinned.size()) + " colours are pinned, and there is room for " +
                     std::to_string(room),
                 "pin fewer, or allow more colours; cells left unpainted need one, too"};
}

// A palette has two entries or more.
std::vector<Rgb8> atLeastTwo(std::vector<Rgb8> colours) {
    if (colours.size() == 1) colours.push_back(colours.front());
    return colours;
}

Result<std::vector<Rgb8>> chosenColours(const CellColours& cells, int room,
                                        const FreePaletteOptions& options,
                                        const core::Progress& progress) {
    const std::vector<Rgb8> painted = paintedColours(cells);
    std::vector<Rgb8> chosen = chooseColours(painted, room, options.pinned);
    if (options.mixing > 0 && !areAllIn(painted, chosen)) {
        PANTILE_ASSIGN_OR_RETURN(chosen, coloursForDither(cells, chosen, options.pinned.size(),
                                                          options.mixing, progress));
    }
    return mergedAlike(painted, std::move(chosen), options.pinned.size(), options.mergeWithin);
}

}  // namespace

Result<core::Palette> freePalette(const std::vector<Rgb8>& seen,
                                  const FreePaletteOptions& options) {
    assert(options.mixing == 0);
    PANTILE_RETURN_IF_ERROR(checkPinned(options.pinned, options.most));
    std::vector<Rgb8> colours = mergedAlike(seen, chooseColours(seen, options.most, options.pinned),
                                            options.pinned.size(), options.mergeWithin);
    return core::Palette::create(atLeastTwo(std::move(colours)));
}

Result<core::Palette> freePalette(const CellColours& cells, const FreePaletteOptions& options,
                                  const core::Progress& progress) {
    const bool hasUnpainted = std::any_of(cells.cells.begin(), cells.cells.end(),
                                          [](const auto& cell) { return !cell.has_value(); });
    const int room = hasUnpainted ? options.most - 1 : options.most;
    PANTILE_RETURN_IF_ERROR(checkPinned(options.pinned, room));
    PANTILE_ASSIGN_OR_RETURN(std::vector<Rgb8> colours,
                             chosenColours(cells, room, options, progress));
    if (colours.empty()) colours.emplace_back();  // nothing is painted at all
    if (!hasUnpainted) return core::Palette::create(atLeastTwo(std::move(colours)));
    const auto transparent = static_cast<core::PaletteIndex>(colours.size());
    colours.emplace_back();
    return core::Palette::create(std::move(colours), transparent);
}

}  // namespace pantile::picture
