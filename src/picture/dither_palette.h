#pragma once

// Fits the colours of a palette to being mixed. See docs/conversion.md section 5.1.

#include <cstddef>
#include <vector>

#include "core/colour.h"
#include "core/progress.h"
#include "core/result.h"
#include "picture/linear_picture.h"

namespace pantile::picture {

/// `start` with the colours from `pinned` on moved to where dithers can mix the picture best, from
/// dark to light; equal ones become one. The pinned ones keep their places.
/// Errors: InvalidInput unless there are 2..256 of them, the transparent entry counted that
/// unpainted cells need; Cancelled.
/// Cost: about half of optimalDither's.
core::Result<std::vector<core::Rgb8>> coloursForDither(const CellColours& wanted,
                                                       const std::vector<core::Rgb8>& start,
                                                       std::size_t pinned, double strength,
                                                       const core::Progress& progress = {});

}  // namespace pantile::picture
