#pragma once

// What an eye at a distance makes of cells: every colour spread over its neighbours. See
// docs/conversion.md section 10.

#include <span>
#include <vector>

#include "core/colour_spaces.h"
#include "picture/linear_picture.h"

namespace pantile::picture {

/// Of the Gaussian, in cells.
inline constexpr double kEyeSigma = 1.5;
/// Cells further away along a side have no say.
inline constexpr int kEyeReach = 6;

/// The Gaussian of kEyeSigma at -kEyeReach .. kEyeReach, with the sum 1.
std::span<const double> eyeWeights();

/// Shape: as `picture`. Each cell is the weighted mean of the painted cells around it, in linear
/// light; cells beyond the edges and unpainted ones have no weight.
CellColours blurredByEye(const CellColours& picture);

}  // namespace pantile::picture
