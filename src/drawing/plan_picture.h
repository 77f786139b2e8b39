#pragma once

// A plan as a picture: the pen's way over the texture, its travels and its picks, as SVG text
// (W3C, 'Scalable Vector Graphics (SVG) 1.1', second edition).

#include <string>
#include <string_view>

#include "core/canvas.h"
#include "core/grid.h"
#include "core/palette.h"
#include "drawing/stroke.h"

namespace pantile::drawing {

/// What the picture shows beside the plan.
/// Shape: the palette's indices are the canvas's swatches.
struct PictureOf {
    std::string_view title;
    const core::Grid& grid;
    const core::Palette& palette;
    const core::Canvas& canvas;
};

/// Equal input gives equal text. The title is escaped, and what it has of control characters is
/// made visible. Units: a tenth of a pointer count.
std::string planSvg(const Plan& plan, const PictureOf& of);

}  // namespace pantile::drawing
