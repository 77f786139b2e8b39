#pragma once

// From the colour that each cell should show to the palette index that it gets. See
// docs/conversion.md sections 6 and 7.

#include <vector>

#include "core/palette.h"
#include "core/progress.h"
#include "core/result.h"
#include "picture/diffusion_kernels.h"
#include "picture/linear_picture.h"
#include "picture/threshold_mask.h"

namespace pantile::picture {

enum class Dither {
    None,
    FloydSteinberg,
    JarvisJudiceNinke,
    Stucki,
    Atkinson,
    Sierra,
    Burkes,
    Bayer2,
    Bayer4,
    Bayer8,
    BlueNoise,
    Optimal,
};

/// The cells of every dither, by its name. `strength` (0..1) is how much of the error is made up
/// for: 0 is no dither. Unpainted cells get the transparent index, which the palette must have if
/// there are such cells. Errors: Cancelled, from Optimal only; the others are quick.
core::Result<std::vector<core::PaletteIndex>> dithered(const CellColours& colours,
                                                       const core::Palette& palette, Dither dither,
                                                       double strength,
                                                       const core::Progress& progress = {});

/// Each cell by itself: the palette entry nearest to its colour as 8-bit sRGB.
std::vector<core::PaletteIndex> mapToPalette(const CellColours& colours,
                                             const core::Palette& palette);

/// As mapToPalette, but what a cell's entry differs from its colour is handed on to its neighbours
/// by `kernel`, in linear light, times `strength`. Unpainted cells take no error and hand on none.
std::vector<core::PaletteIndex> ditherToPalette(const CellColours& colours,
                                                const core::Palette& palette,
                                                const DiffusionKernel& kernel, double strength);

/// Each cell by itself: of 64 entries that mix its colour, from light to dark, the one at the
/// threshold of the cell's place in the mask.
/// Cost: 64 searches of the palette a cell.
std::vector<core::PaletteIndex> orderedDither(const CellColours& colours,
                                              const core::Palette& palette,
                                              const ThresholdMask& mask, double strength);

}  // namespace pantile::picture
