#pragma once

// How visibly the edges of a texture differ where it is repeated. See docs/seams-and-colours.md
// section 2.

#include <vector>

#include "core/palette.h"
#include "core/pixels.h"
#include "core/result.h"
#include "picture/seam_pairs.h"

namespace pantile::picture {

/// Units: CIEDE2000; 100 between an unpainted and a painted cell.
struct SeamDifference {
    double across = 0;           ///< Mean of the cells that meet at the seam.
    double inside = 0;           ///< Mean of all others that lie side by side; 0 if there are none.
    std::vector<double> places;  ///< Each row of a vertical seam, each column of a horizontal one.

    /// 1 if the seam is as smooth as the inside, more if it is seen more than the inside. A
    /// difference of 1 is just visible; that much is added on both sides, so that nothing is
    /// divided by zero and what nobody sees does not count.
    double ratio() const { return ratioOf(across); }

    /// The same for one place.
    double ratioAt(int place) const { return ratioOf(places[static_cast<std::size_t>(place)]); }

private:
    double ratioOf(double difference) const { return (difference + 1) / (inside + 1); }
};

struct SeamCheck {
    SeamDifference vertical;
    SeamDifference horizontal;
};

/// Errors: InvalidInput if an index lies outside the palette.
core::Result<SeamCheck> checkSeams(const core::Grid& grid, const core::Palette& palette);

/// The texture shifted by half its sides with wrap-around, so that its seams cross in the middle,
/// each cell a square of factor x factor pixels. Around it lies a margin of one cell: marks at its
/// left and right stand in the rows, at its top and bottom in the columns where a seam is more than
/// twice as visible as the inside. The rest of the margin and unpainted cells have alpha 0.
/// Shape: (width + 2) x (height + 2) squares. Errors: InvalidInput if the factor is outside 1..64
/// or an index lies outside the palette.
core::Result<core::Pixels> seamPicture(const core::Grid& grid, const core::Palette& palette,
                                       int factor);

}  // namespace pantile::picture
