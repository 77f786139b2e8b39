#include "picture/convert.h"

#include <algorithm>
#include <string>
#include <utility>
#include <vector>

#include "core/range_check.h"
#include "picture/palette_builder.h"
#include "picture/transparency.h"

namespace pantile::picture {
namespace {

using core::Error;
using core::ErrorKind;
using core::Result;

std::string sides(core::Size size) {
    return std::to_string(size.width) + "x" + std::to_string(size.height);
}

Result<void> checkPicture(const core::Picture& picture) {
    const core::Size size = picture.pixels.size;
    const bool filled = size.width >= 1 && size.height >= 1 &&
                        picture.pixels.pixels.size() == static_cast<std::size_t>(size.width) *
                                                            static_cast<std::size_t>(size.height);
    if (filled) return {};
    return Error{ErrorKind::InvalidInput,
                 std::to_string(picture.pixels.pixels.size()) +
                     " pixels do not fill a picture of " + sides(size),
                 "read the picture again"};
}

Result<void> checkOptions(const ConvertOptions& options) {
    const bool unlimited = options.fit == Fit::Exact && options.target == core::Size{};
    if (!unlimited)
        PANTILE_RETURN_IF_ERROR(core::checkGridSize(options.target.width, options.target.height));
    if (!options.palette && options.colours != 0)
        PANTILE_RETURN_IF_ERROR(core::checkRange("the number of colours", options.colours,
                                                 core::kMinPaletteColours,
                                                 core::kMaxPaletteColours));
    PANTILE_RETURN_IF_ERROR(checkAdjustments(options.adjustments));
    if (!(options.strength >= 0 && options.strength <= 1))
        return Error{ErrorKind::InvalidInput,
                     "the strength " + std::to_string(options.strength) + " is outside 0 to 1",
                     "choose a value in that range"};
    return {};
}

Result<void> checkExactFit(core::Size picture, core::Size target) {
    const core::Size limit =
        target == core::Size{} ? core::Size{core::kMaxGridSide, core::kMaxGridSide} : target;
    if (picture.width <= limit.width && picture.height <= limit.height) return {};
    return Error{ErrorKind::DoesNotFit,
                 "a picture of " + sides(picture) + " pixels does not fit " + sides(limit) +
                     " cells at one pixel a cell",
                 "use another fit, such as cover or contain, or a larger canvas"};
}

std::vector<core::Rgb8> paintedColours(const CellColours& colours) {
    std::vector<core::Rgb8> painted;
    painted.reserve(colours.cells.size());
    for (const auto& colour : colours.cells) {
        if (colour) painted.push_back(core::toRgb8(*colour));
    }
    return painted;
}

Result<core::Palette> freePalette(const CellColours& cells, int limit) {
    const int most = limit == 0 ? core::kMaxPaletteColours : limit;
    const std::vector<core::Rgb8> painted = paintedColours(cells);
    const bool hasUnpainted = painted.size() < cells.cells.size();
    std::vector<core::Rgb8> colours = chooseColours(painted, hasUnpainted ? most - 1 : most);
    if (colours.empty()) colours.emplace_back();  // nothing is painted at all
    if (!hasUnpainted) {
        if (colours.size() == 1) colours.push_back(colours.front());
        return core::Palette::create(std::move(colours));
    }
    const auto transparent = static_cast<core::PaletteIndex>(colours.size());
    colours.emplace_back();
    return core::Palette::create(std::move(colours), transparent);
}

Result<Converted> mapped(const CellColours& cells, core::Palette palette,
                         const ConvertOptions& options) {
    std::vector<core::PaletteIndex> indices =
        options.dither == Dither::FloydSteinberg
            ? ditherToPalette(cells, palette, kFloydSteinberg, options.strength)
            : mapToPalette(cells, palette);
    PANTILE_ASSIGN_OR_RETURN(
        core::Grid grid,
        core::Grid::create(cells.size.width, cells.size.height, std::move(indices)));
    return Converted{std::move(grid), std::move(palette)};
}

CellColours withoutAlpha(const LinearPicture& picture, const ConvertOptions& options) {
    if (options.background) return layOn(picture, *options.background);
    if (options.palette && !options.palette->transparent())
        return layOn(picture, options.palette->colours().front());
    return cutByAlpha(picture, options.alphaThreshold);
}

}  // namespace

Result<Converted> convertPicture(const core::Picture& picture, const ConvertOptions& options,
                                 const core::Progress& progress) {
    PANTILE_RETURN_IF_ERROR(checkPicture(picture));
    PANTILE_RETURN_IF_ERROR(checkOptions(options));
    if (options.fit == Fit::Exact) {
        PANTILE_RETURN_IF_ERROR(checkExactFit(picture.pixels.size, options.target));
        const bool mayKeep = options.adjustments == Adjustments{} && !options.background;
        std::optional<Converted> kept = mayKeep ? keptIndexed(picture) : std::nullopt;
        if (kept && (!options.palette || *options.palette == kept->palette))
            return *std::move(kept);
    }
    const Framing framing = frame(picture.pixels.size, options.target, options.fit, options.anchor);
    PANTILE_ASSIGN_OR_RETURN(LinearPicture scaled,
                             resample(picture.pixels, framing, options.scale, progress));
    const CellColours cells =
        withoutAlpha(adjusted(std::move(scaled), options.adjustments), options);
    if (options.palette) return mapped(cells, *options.palette, options);
    PANTILE_ASSIGN_OR_RETURN(core::Palette palette, freePalette(cells, options.colours));
    return mapped(cells, std::move(palette), options);
}

}  // namespace pantile::picture
