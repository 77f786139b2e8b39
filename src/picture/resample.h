#pragma once

// Brings a picture to the number of cells. See docs/conversion.md section 3.

#include "core/pixels.h"
#include "core/progress.h"
#include "core/result.h"
#include "picture/framing.h"
#include "picture/linear_picture.h"

namespace pantile::picture {

enum class Scale {
    Area,     ///< The mean of what lies under the cell, in linear light, weighted by alpha.
    Lanczos,  ///< A windowed sinc of three lobes: sharper, with slight rings at hard edges.
    Nearest,  ///< The pixel under the cell's centre.
};

/// Shape: a picture of framing.target; cells that show nothing have alpha 0.
/// Errors: Cancelled.
/// Cost: linear in the pixels shown and in the cells; Lanczos takes six times as long.
core::Result<LinearPicture> resample(const core::Pixels& pixels, const Framing& framing,
                                     Scale scale, const core::Progress& progress = {});

}  // namespace pantile::picture
