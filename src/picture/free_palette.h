#pragma once

// The palette of a picture whose canvas leaves the colours free. See docs/conversion.md section 5.

#include <vector>

#include "core/palette.h"
#include "core/progress.h"
#include "core/result.h"
#include "picture/linear_picture.h"

namespace pantile::picture {

struct FreePaletteOptions {
    int most = core::kMaxPaletteColours;  ///< Entries, 2..256; the transparent one counts.
    std::vector<core::Rgb8> pinned;       ///< Stay as they are and come first, in this order.
    int mergeWithin = 0;                  ///< Join colours closer than this: see mergedAlike.
    double mixing = 0;                    ///< Strength of the dither to come, 0..1; 0 is none.
};

/// Colours that stand for `seen`, each of which counts as often as it is there; `mixing` must be 0.
/// Shape: the pinned colours, then the chosen ones; at least two.
/// Errors: InvalidInput if a colour is pinned twice, or more are than there is room for.
core::Result<core::Palette> freePalette(const std::vector<core::Rgb8>& seen,
                                        const FreePaletteOptions& options);

/// Shape: the pinned colours, the chosen ones, and the transparent entry if a cell is unpainted.
/// Errors: InvalidInput if a colour is pinned twice, or more are than there is room for; Cancelled.
core::Result<core::Palette> freePalette(const CellColours& cells, const FreePaletteOptions& options,
                                        const core::Progress& progress = {});

}  // namespace pantile::picture
