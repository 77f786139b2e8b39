#include "picture/dither.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <cstddef>
#include <limits>

#include "picture/nearest_colour.h"

namespace pantile::picture {
namespace {

core::LinearRgb clamped(const core::LinearRgb& colour, double least, double most) {
    return {std::clamp(colour.r, least, most), std::clamp(colour.g, least, most),
            std::clamp(colour.b, least, most)};
}

double largestDifference(const core::LinearRgb& p, const core::LinearRgb& q) {
    return std::max({std::abs(p.r - q.r), std::abs(p.g - q.g), std::abs(p.b - q.b)});
}

std::vector<core::LinearRgb> paintableColours(const core::Palette& palette) {
    std::vector<core::LinearRgb> colours;
    for (int i = 0; i < palette.size(); ++i) {
        const auto index = static_cast<core::PaletteIndex>(i);
        if (palette.transparent() != index) colours.push_back(core::toLinear(palette[index]));
    }
    return colours;
}

// The longest step on a walk along the palette that always goes on to the colour nearest to those
// already met (the longest edge of the minimum spanning tree; Prim 1957). A cell whose colour the
// palette can mix is hardly further than that from what it shows. A larger error comes from colours
// outside the palette's range; handed on without a bound it would smear over everything below.
double widestGap(std::vector<core::LinearRgb> colours) {
    core::LinearRgb latest = colours.back();
    colours.pop_back();
    std::vector<double> distances(colours.size(), std::numeric_limits<double>::infinity());
    double widest = 0;
    while (!colours.empty()) {
        for (std::size_t i = 0; i < colours.size(); ++i)
            distances[i] = std::min(distances[i], largestDifference(colours[i], latest));
        const auto next = std::min_element(distances.begin(), distances.end());
        widest = std::max(widest, *next);
        const auto at = static_cast<std::size_t>(next - distances.begin());
        latest = colours[at];
        colours[at] = colours.back();
        distances[at] = distances.back();
        colours.pop_back();
        distances.pop_back();
    }
    return widest;
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
    shown.reserve(palette.colours().size());
    for (const core::Rgb8 colour : palette.colours()) shown.push_back(core::toLinear(colour));
    const double largestError = widestGap(paintableColours(palette));

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
                -largestError, largestError);
            return core::LinearRgb{error.r * strength, error.g * strength, error.b * strength};
        });
    return cells;
}

}  // namespace pantile::picture
