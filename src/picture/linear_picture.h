#pragma once

// Pictures in linear light, between scaling and mapping to a palette: the only light that may be
// averaged or added. See docs/conversion.md section 3.

#include <optional>
#include <vector>

#include "core/colour_spaces.h"
#include "core/geometry.h"

namespace pantile::picture {

/// Units: alpha 0..1, not multiplied into the colour.
struct LinearPixel {
    core::LinearRgb colour;
    double alpha = 0;
};

/// Shape: size.width x size.height, row by row from the top.
struct LinearPicture {
    core::Size size;
    std::vector<LinearPixel> pixels;
};

/// The colour that each cell shall show; nothing where it is left unpainted.
/// Shape: as LinearPicture.
struct CellColours {
    core::Size size;
    std::vector<std::optional<core::LinearRgb>> cells;
};

}  // namespace pantile::picture
