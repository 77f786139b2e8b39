#pragma once

// What a JPEG file's coefficients say of the colours of cells, as equations. See docs/conversion.md
// section 11.

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

#include "core/coefficient_planes.h"
#include "picture/cell_lines.h"

namespace pantile::picture {

struct CellShare {
    std::size_t cell = 0;
    double weight = 0;
};

/// The sum of the cells' levels times their weights was rounded to `value`, which is a whole number
/// of `step`s.
struct CellCoefficient {
    std::vector<CellShare> shares;  ///< Of different cells; never empty.
    double value = 0;
    double step = 1;
    bool isMean = false;  ///< Of a block's samples, times eight.
};

/// One channel's normal equations: cells x of levels 0..255 misfit by x'Nx - 2b'x and a constant,
/// in units of the expected square.
/// Shape: `normal` is cells x cells, symmetric and positive definite; `right` one a cell.
struct CellEquations {
    std::vector<double> normal;
    std::vector<double> right;
    /// What they were made of; empty for pictures of more pixels than kMostBoundedPixels.
    std::vector<CellCoefficient> coefficients;
    /// How many are not 0 though flat cells would leave them so.
    int strays = 0;
};

/// Above this the equations are not solved: cost is the third power of the cells.
inline constexpr std::size_t kMostSolvedCells = 576;

/// Above this coefficients are not kept: there are about as many as pixels.
inline constexpr std::int64_t kMostBoundedPixels = std::int64_t{256} * 256;

/// Nothing if `lines` have pixels outside all cells or too many cells, or if the planes are of
/// another size.
std::optional<std::array<CellEquations, 3>> cellEquations(const core::CoefficientPlanes& planes,
                                                          core::Size pixels,
                                                          const CellLines& lines);

}  // namespace pantile::picture
