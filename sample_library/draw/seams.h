#pragma once

// Looks for seams: a texture that tiles must not jump more over its edge than it does inside.

#include "draw/sheet.h"

namespace pantile::sample_art {

enum class SeamAxis { Across, Down };

/// Units: mean CIEDE2000 over the cells of two neighbouring columns (or rows).
struct SeamMeasure {
    double overEdge = 0;       ///< Between the last and the first.
    double largestInside = 0;  ///< The largest mean between two neighbours inside.

    bool isSeamless() const { return overEdge <= largestInside; }
};

/// A clear cell counts as the colour that its palette entry holds, black.
SeamMeasure measureSeam(const Sheet& sheet, SeamAxis axis);

}  // namespace pantile::sample_art
