#include "picture/dither.h"

#include <algorithm>
#include <cassert>

#include "picture/nearest_colour.h"

namespace pantile::picture {
namespace {

// More than this cannot be made good by neighbours within the range of a screen. Without a bound a
// colour far outside the palette would smear over everything below it.
constexpr double kLargestError = 1;

core::LinearRgb clamped(const core::LinearRgb& colour, double least, double most) {
    return {std::clamp(colour.r, least, most), std::clamp(colour.g, least, most),
            std::clamp(colour.b, least, most)};
}

core::PaletteIndex unpainted(const core::Palette& palette) {
    assert(palette.transparent());
    return *palette.transparent();
}

}  // namespace

std::vector<core::PaletteIndex> mapToPalette(const CellColours& colours,
                                             const core::Palette& palette) {
    const NearestColour nearest(palette);
    std::vector<core::PaletteIndex> cells;
    cells.reserve(colours.cells.size());
    for (const auto& colour : colours.cells)
        cells.push_back(colour ? nearest.find(core::toRgb8(*colour)) : unpainted(palette));
    return cells;
}

std::vector<core::PaletteIndex> ditherToPalette(const CellColours& colours,
                                                const core::Palette& palette,
                                                const DiffusionKernel& kernel, double strength) {
    const NearestColour nearest(palette);
    std::vector<core::LinearRgb> shown;
    for (const core::Rgb8 colour : palette.colours()) shown.push_back(core::toLinear(colour));

    std::vector<core::LinearRgb> field;
    field.reserve(colours.cells.size());
    for (const auto& colour : colours.cells) field.push_back(colour.value_or(core::LinearRgb{}));

    std::vector<core::PaletteIndex> cells(colours.cells.size());
    diffuseError(
        colours.size, std::move(field), kernel, Scan::Serpentine,
        [&](std::size_t cell, const core::LinearRgb& wanted) -> std::optional<core::LinearRgb> {
            if (!colours.cells[cell]) {
                cells[cell] = unpainted(palette);
                return std::nullopt;
            }
            const core::PaletteIndex index = nearest.find(core::toOkLab(clamped(wanted, 0, 1)));
            cells[cell] = index;
            const core::LinearRgb error = clamped(
                {wanted.r - shown[index].r, wanted.g - shown[index].g, wanted.b - shown[index].b},
                -kLargestError, kLargestError);
            return core::LinearRgb{error.r * strength, error.g * strength, error.b * strength};
        });
    return cells;
}

}  // namespace pantile::picture
