#include "tasks/drawing_choice.h"

#include <algorithm>
#include <array>
#include <tuple>

namespace pantile::tasks {

using core::Error;
using core::ErrorKind;
using core::PaletteIndex;
using core::Result;

namespace {

// For each palette index of the texture: the index that it has on the canvas.
using IndexMap = std::array<PaletteIndex, core::kMaxPaletteColours>;

std::vector<PaletteIndex> indicesInUse(const core::Texture& texture) {
    std::array<bool, core::kMaxPaletteColours> used{};
    for (const PaletteIndex index : texture.grid().cells()) used[index] = true;
    std::vector<PaletteIndex> inUse;
    for (int i = 0; i < texture.palette().size(); ++i) {
        const auto index = static_cast<PaletteIndex>(i);
        if (used[index] && texture.palette().transparent() != index) inUse.push_back(index);
    }
    return inUse;
}

bool usesTransparent(const core::Texture& texture) {
    const auto transparent = texture.palette().transparent();
    const auto cells = texture.grid().cells();
    return transparent && std::find(cells.begin(), cells.end(), *transparent) != cells.end();
}

Error tooManyColours(const core::Canvas& canvas, std::size_t inUse) {
    return {ErrorKind::DoesNotFit,
            "it uses " + std::to_string(inUse) + " colours, and the canvas " + canvas.name +
                " has " + std::to_string(canvas.colourLimit()),
            "add it again with --colours " + std::to_string(canvas.colourLimit()) +
                " or choose another canvas"};
}

// The colours that the canvas will show, and where each of the texture's goes.
Result<std::vector<core::Rgb8>> mapToFixed(const core::Texture& texture, const core::Canvas& canvas,
                                           IndexMap& map) {
    const auto swatches = canvas.palette->colours();
    for (const PaletteIndex index : indicesInUse(texture)) {
        const core::Rgb8 colour = texture.palette()[index];
        // Its own place first: palettes may hold a colour twice.
        if (index < swatches.size() && swatches[index] == colour) {
            map[index] = index;
            continue;
        }
        const auto found = std::find(swatches.begin(), swatches.end(), colour);
        if (found == swatches.end()) {
            return Error{ErrorKind::DoesNotFit,
                         "its colour " + core::toHex(colour) +
                             " is not in the palette of the canvas " + canvas.name,
                         "add it again with --canvas " + canvas.name + " to have it converted"};
        }
        map[index] = static_cast<PaletteIndex>(found - swatches.begin());
    }
    return std::vector<core::Rgb8>(swatches.begin(), swatches.end());
}

Result<std::vector<core::Rgb8>> mapToFree(const core::Texture& texture, const core::Canvas& canvas,
                                          IndexMap& map) {
    const auto limit = static_cast<std::size_t>(canvas.freeColours);
    const std::vector<PaletteIndex> inUse = indicesInUse(texture);
    if (inUse.size() > limit) return tooManyColours(canvas, inUse.size());
    std::vector<core::Rgb8> colours;
    const bool keepsPlaces = inUse.empty() || inUse.back() < limit;
    if (keepsPlaces) {
        const auto all = texture.palette().colours();
        colours.assign(all.begin(),
                       all.begin() + static_cast<std::ptrdiff_t>(std::min(all.size(), limit)));
        for (const PaletteIndex index : inUse) map[index] = index;
    } else {
        for (const PaletteIndex index : inUse) {
            map[index] = static_cast<PaletteIndex>(colours.size());
            colours.push_back(texture.palette()[index]);
        }
    }
    return colours;
}

}  // namespace

Result<FittedTexture> fitToCanvas(const core::Texture& texture, const core::Canvas& canvas) {
    const core::Grid& grid = texture.grid();
    if (grid.width() > canvas.size.width || grid.height() > canvas.size.height) {
        return Error{ErrorKind::DoesNotFit,
                     "it has " + std::to_string(grid.width()) + "x" +
                         std::to_string(grid.height()) + " cells, and the canvas " + canvas.name +
                         " " + std::to_string(canvas.size.width) + "x" +
                         std::to_string(canvas.size.height),
                     "choose a larger canvas"};
    }
    IndexMap map{};
    PANTILE_ASSIGN_OR_RETURN(
        std::vector<core::Rgb8> colours,
        canvas.palette ? mapToFixed(texture, canvas, map) : mapToFree(texture, canvas, map));
    std::optional<PaletteIndex> transparent;
    if (usesTransparent(texture)) {
        if (colours.size() == core::kMaxPaletteColours) return tooManyColours(canvas, 257);
        transparent = static_cast<PaletteIndex>(colours.size());
        map[*texture.palette().transparent()] = *transparent;
        colours.push_back(texture.palette()[*texture.palette().transparent()]);
    }
    if (colours.size() < core::kMinPaletteColours) colours.push_back(colours.front());
    std::vector<PaletteIndex> cells(grid.cells().begin(), grid.cells().end());
    for (PaletteIndex& cell : cells) cell = map[cell];
    PANTILE_ASSIGN_OR_RETURN(core::Palette palette,
                             core::Palette::create(std::move(colours), transparent));
    PANTILE_ASSIGN_OR_RETURN(core::Grid fitted,
                             core::Grid::create(grid.width(), grid.height(), std::move(cells)));
    return FittedTexture{std::move(fitted), std::move(palette)};
}

namespace {

/// More for a canvas that comes nearer to taking the texture: one that takes its size, then the
/// most colours; of those that are too small, the largest.
auto nearness(const core::Texture& texture, const core::Canvas& canvas) {
    const int area = canvas.size.width * canvas.size.height;
    const bool takesSize = texture.grid().width() <= canvas.size.width &&
                           texture.grid().height() <= canvas.size.height;
    return takesSize ? std::tuple(1, canvas.colourLimit(), -area)
                     : std::tuple(0, area, canvas.colourLimit());
}

Error fitsNone(const core::Texture& texture, std::span<const core::Canvas> canvases) {
    std::string message = "there is no canvas";
    if (!canvases.empty()) {
        const auto nearest = std::max_element(
            canvases.begin(), canvases.end(), [&](const core::Canvas& a, const core::Canvas& b) {
                return nearness(texture, a) < nearness(texture, b);
            });
        message = "it fits no canvas: " + fitToCanvas(texture, *nearest).error().message;
    }
    return {ErrorKind::DoesNotFit, message, "'pantile canvas add' makes one that it fits"};
}

}  // namespace

Result<core::Canvas> chooseCanvas(const core::Texture& texture,
                                  std::span<const core::Canvas> canvases) {
    const core::Canvas* best = nullptr;
    const auto rank = [](const core::Canvas& canvas) {
        return std::tuple(canvas.size.width * canvas.size.height, canvas.palette ? 0 : 1,
                          canvas.name);
    };
    for (const core::Canvas& canvas : canvases) {
        const bool isBetter = best == nullptr || rank(canvas) < rank(*best);
        if (isBetter && fitToCanvas(texture, canvas)) best = &canvas;
    }
    if (best != nullptr) return *best;
    return fitsNone(texture, canvases);
}

}  // namespace pantile::tasks
