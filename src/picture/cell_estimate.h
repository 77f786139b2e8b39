#pragma once

// The colours of cells behind pixels that a lossy format has blurred: least squares over all
// pixels, so that what chroma at half resolution has spread is put back. See docs/conversion.md
// section 11.

#include <array>
#include <vector>

#include "core/pixels.h"
#include "picture/cell_lines.h"

namespace pantile::picture {

/// Luma and two colour differences in levels of 0..255. Source: ITU-T T.871 (JFIF), section 7.
struct Ycc {
    std::array<double, 3> values{};
};

Ycc toYcc(core::Rgb8 colour);
core::Rgb8 toRgb8(const Ycc& colour);

/// Shape: one entry a cell, row by row.
struct CellEstimates {
    core::Size size;
    std::vector<Ycc> colours;
    std::vector<double> alphas;  ///< 0..255.
    double lumaResidual = 0;     ///< Root mean square of what pixels differ from their cells.
};

/// Every cell of `lines` must hold a pixel.
CellEstimates estimateCells(const core::Pixels& pixels, const CellLines& lines);

}  // namespace pantile::picture
