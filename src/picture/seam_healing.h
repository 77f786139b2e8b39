#pragma once

// Makes a texture repeat without a visible seam, by cells copied from its inside. See
// docs/seams-and-colours.md section 3.

#include <cstdint>
#include <stop_token>

#include "core/palette.h"
#include "core/result.h"
#include "picture/cell_difference.h"
#include "picture/seam_pairs.h"

namespace pantile::picture {

enum class HealedSeams { Vertical, Horizontal, Both };

struct HealOptions {
    HealedSeams seams = HealedSeams::Both;
    /// How many cells on each side of a seam may be replaced, 1 to half the side; 0 is an eighth of
    /// the side, at least 1.
    int overlap = 0;
};

/// The sum over the pairs of cells that meet at the seam. Units: as CellDifference::distance.
std::int64_t seamSum(const core::Grid& grid, const CellDifference& difference, Seam seam);

/// Replaces cells beside a seam by a strip of cells that lie side by side inside the grid; the
/// strip ends, on both sides, on a minimum-error boundary cut. Of all strips, the one whose cuts
/// and seams are seen least. A seam that is as smooth as the inside is left alone, and so is one
/// that no strip improves. The seamSum() of a seam that is healed never rises; that of the other,
/// if only one is, by no more than the first one falls. Shape: the grid's own size; only indices
/// that occur in it. Errors: InvalidInput if the overlap is out of range or an index lies outside
/// the palette; Cancelled. Cost: at most the square of the overlap times the number of cells, for
/// each seam; about half a second for 256 x 256 cells.
/// Source: A. A. Efros, W. T. Freeman, 'Image Quilting for Texture Synthesis and Transfer',
/// SIGGRAPH 2001, section 2.
core::Result<core::Grid> healSeams(const core::Grid& grid, const core::Palette& palette,
                                   const HealOptions& options = {},
                                   const std::stop_token& stop = {});

}  // namespace pantile::picture
