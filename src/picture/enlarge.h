#pragma once

#include "core/palette.h"
#include "core/pixels.h"
#include "core/result.h"

namespace pantile::picture {

inline constexpr int kMaxEnlargement = 64;

/// Every cell as a square of factor x factor pixels; unpainted cells have alpha 0.
/// Errors: InvalidInput if the factor is outside 1..64 or an index lies outside the palette.
core::Result<core::Pixels> enlarged(const core::Grid& grid, const core::Palette& palette,
                                    int factor);

}  // namespace pantile::picture
