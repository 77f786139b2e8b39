#include "picture/dither.h"

#include <cassert>
#include <cstddef>
#include <optional>

#include "picture/blue_noise.h"
#include "picture/error_diffusion.h"
#include "picture/nearest_colour.h"
#include "picture/optimal_dither.h"
#include "picture/palette_light.h"

namespace pantile::picture {
namespace {

core::PaletteIndex unpainted(const core::Palette& palette) {
    assert(palette.transparent());
    return *palette.transparent();
}

const DiffusionKernel* kernelOf(Dither dither) {
    switch (dither) {
        case Dither::FloydSteinberg:
            return &kFloydSteinberg;
        case Dither::JarvisJudiceNinke:
            return &kJarvisJudiceNinke;
        case Dither::Stucki:
            return &kStucki;
        case Dither::Atkinson:
            return &kAtkinson;
        case Dither::Sierra:
            return &kSierra;
        case Dither::Burkes:
            return &kBurkes;
        default:
            return nullptr;
    }
}

const ThresholdMask* maskOf(Dither dither) {
    switch (dither) {
        case Dither::Bayer2:
            return &kBayer2;
        case Dither::Bayer4:
            return &kBayer4;
        case Dither::Bayer8:
            return &kBayer8;
        case Dither::BlueNoise:
            return &blueNoise();
        default:
            return nullptr;
    }
}

}  // namespace

core::Result<std::vector<core::PaletteIndex>> dithered(const CellColours& colours,
                                                       const core::Palette& palette, Dither dither,
                                                       double strength,
                                                       const core::Progress& progress) {
    if (strength > 0) {
        if (dither == Dither::Optimal) return optimalDither(colours, palette, strength, progress);
        if (const DiffusionKernel* kernel = kernelOf(dither))
            return ditherToPalette(colours, palette, *kernel, strength);
        if (const ThresholdMask* mask = maskOf(dither))
            return orderedDither(colours, palette, *mask, strength);
    }
    return mapToPalette(colours, palette);
}

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
    const PaletteLight light(palette);
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
            cells[cell] = light.nearest(wanted);
            const core::LinearRgb error = light.error(wanted, cells[cell]);
            return core::LinearRgb{error.r * strength, error.g * strength, error.b * strength};
        });
    return cells;
}

}  // namespace pantile::picture
