#pragma once

// What a JPEG file's coefficients say of the colours of cells, as equations. See docs/conversion.md
// section 11.

#include <array>
#include <cstddef>
#include <optional>
#include <vector>

#include "core/coefficient_planes.h"
#include "picture/cell_lines.h"

namespace pantile::picture {

/// One channel's normal equations: cells x of levels 0..255 misfit by x'Nx - 2b'x and a constant,
/// in units of the expected square.
/// Shape: `normal` is cells x cells, symmetric and positive definite; `right` one a cell.
struct CellEquations {
    std::vector<double> normal;
    std::vector<double> right;
};

/// Above this the equations are not solved: cost is the third power of the cells.
inline constexpr std::size_t kMostSolvedCells = 576;

/// Nothing if `lines` have pixels outside all cells or too many cells, or if the planes are of
/// another size.
std::optional<std::array<CellEquations, 3>> cellEquations(const core::CoefficientPlanes& planes,
                                                          core::Size pixels,
                                                          const CellLines& lines);

}  // namespace pantile::picture
