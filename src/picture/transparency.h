#pragma once

// What becomes of alpha: a texture's cell is painted or it is not. See docs/conversion.md
// section 4.

#include <cstdint>

#include "core/colour.h"
#include "picture/linear_picture.h"

namespace pantile::picture {

/// Cells whose alpha, as 0..255 to the nearest whole number, is below `threshold` are left
/// unpainted; the others keep their colour and are opaque.
CellColours cutByAlpha(const LinearPicture& picture, std::uint8_t threshold);

/// Every cell painted: laid over `background`, mixed in linear light.
CellColours layOn(const LinearPicture& picture, core::Rgb8 background);

}  // namespace pantile::picture
