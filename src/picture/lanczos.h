#pragma once

// Scaling by a windowed sinc of three lobes in linear light: sharper than means. See
// docs/conversion.md section 3.

#include "core/pixels.h"
#include "core/progress.h"
#include "core/result.h"
#include "picture/framing.h"
#include "picture/linear_picture.h"

namespace pantile::picture {

/// Shape: a picture of framing.target; cells that show nothing have alpha 0. Colours and alphas
/// beyond 0..1, which the kernel's negative lobes can make, are cut to it.
/// Errors: Cancelled.
/// Cost: six cells for each pixel at most, once a row and once a column.
core::Result<LinearPicture> lanczosScaled(const core::Pixels& pixels, const Framing& framing,
                                          const core::Progress& progress = {});

}  // namespace pantile::picture
