#pragma once

// From the colour that each cell should show to the palette index that it gets. See
// docs/conversion.md sections 6 and 7.

#include <vector>

#include "core/palette.h"
#include "picture/error_diffusion.h"
#include "picture/linear_picture.h"

namespace pantile::picture {

enum class Dither { None, FloydSteinberg };

/// Each cell by itself: the palette entry nearest to its colour as 8-bit sRGB. Unpainted cells get
/// the transparent index, which the palette must have if there are such cells.
std::vector<core::PaletteIndex> mapToPalette(const CellColours& colours,
                                             const core::Palette& palette);

/// As mapToPalette, but what a cell's entry differs from its colour is handed on to its neighbours
/// by `kernel`, in linear light, times `strength` (0..1). Unpainted cells take no error and hand on
/// none.
std::vector<core::PaletteIndex> ditherToPalette(const CellColours& colours,
                                                const core::Palette& palette,
                                                const DiffusionKernel& kernel, double strength);

}  // namespace pantile::picture
