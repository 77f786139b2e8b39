#include "picture/convert.h"

#include <string>
#include <utility>
#include <vector>

#include "core/range_check.h"
#include "picture/free_palette.h"
#include "picture/merge_alike.h"
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

Result<void> checkColours(const ConvertOptions& options) {
    if (options.palette && !(options.pinned.empty() && options.mergeWithin == 0))
        return Error{ErrorKind::InvalidInput,
                     "the palette is fixed, so no colour can be pinned or merged",
                     "leave the palette free, or pin and merge nothing"};
    if (!options.palette && options.colours != 0)
        PANTILE_RETURN_IF_ERROR(core::checkRange("the number of colours", options.colours,
                                                 core::kMinPaletteColours,
                                                 core::kMaxPaletteColours));
    return core::checkRange("the distance of colours to merge", options.mergeWithin, 0,
                            kMergeUnits);
}

Result<void> checkOptions(const ConvertOptions& options) {
    const bool unlimited = options.fit == Fit::Exact && options.target == core::Size{};
    if (!unlimited)
        PANTILE_RETURN_IF_ERROR(core::checkGridSize(options.target.width, options.target.height));
    PANTILE_RETURN_IF_ERROR(checkColours(options));
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

FreePaletteOptions freePaletteOptions(const ConvertOptions& options) {
    return {options.colours == 0 ? core::kMaxPaletteColours : options.colours, options.pinned,
            options.mergeWithin, options.dither == Dither::None ? 0 : options.strength};
}

// Whether an indexed picture may stay as it is.
bool asItIs(const ConvertOptions& options) {
    return options.pinned.empty() && options.mergeWithin == 0 &&
           options.adjustments == Adjustments{} && !options.background;
}

Result<ConvertedPicture> mapped(CellColours cells, core::Palette palette,
                                const ConvertOptions& options, const core::Progress& progress) {
    PANTILE_ASSIGN_OR_RETURN(std::vector<core::PaletteIndex> indices,
                             dithered(cells, palette, options.dither, options.strength, progress));
    PANTILE_ASSIGN_OR_RETURN(
        core::Grid grid,
        core::Grid::create(cells.size.width, cells.size.height, std::move(indices)));
    return ConvertedPicture{std::move(grid), std::move(palette), std::move(cells)};
}

CellColours withoutAlpha(const LinearPicture& picture, const ConvertOptions& options) {
    if (options.background) return layOn(picture, *options.background);
    if (options.palette && !options.palette->transparent())
        return layOn(picture, options.palette->colours().front());
    return cutByAlpha(picture, options.alphaThreshold);
}

}  // namespace

Result<ConvertedPicture> convertPicture(const core::Picture& picture, const ConvertOptions& options,
                                        const core::Progress& progress) {
    PANTILE_RETURN_IF_ERROR(checkPicture(picture));
    PANTILE_RETURN_IF_ERROR(checkOptions(options));
    if (options.fit == Fit::Exact) {
        PANTILE_RETURN_IF_ERROR(checkExactFit(picture.pixels.size, options.target));
        std::optional<Converted> kept = asItIs(options) ? keptIndexed(picture) : std::nullopt;
        if (kept && (!options.palette || *options.palette == kept->palette))
            return ConvertedPicture{std::move(kept->grid), std::move(kept->palette), {}};
    }
    const Framing framing = frame(picture.pixels.size, options.target, options.fit, options.anchor);
    PANTILE_ASSIGN_OR_RETURN(LinearPicture scaled,
                             resample(picture.pixels, framing, options.scale, progress));
    CellColours cells = withoutAlpha(adjusted(std::move(scaled), options.adjustments), options);
    if (options.palette) return mapped(std::move(cells), *options.palette, options, progress);
    PANTILE_ASSIGN_OR_RETURN(core::Palette palette,
                             freePalette(cells, freePaletteOptions(options), progress));
    return mapped(std::move(cells), std::move(palette), options, progress);
}

}  // namespace pantile::picture
