#pragma once

// What is stored about the colours of a picture, so that it can be found and sorted by them.

#include <cstdint>
#include <vector>

#include "core/grid.h"
#include "core/palette.h"

namespace pantile::catalogue {

struct PaintedColours {
    /// A bit for each palette entry that occurs, the transparent one not counted: the lowest bit of
    /// the first byte for entry 0; no empty bytes at the end.
    std::vector<std::uint8_t> used;
    /// Rises with the place of the most painted colour: greys from black to white, then the others
    /// by hue from red on, dark before light; 0 if nothing is painted.
    std::int64_t tone = 0;

    bool operator==(const PaintedColours&) const = default;
};

/// Every index must lie inside the palette.
PaintedColours paintedColours(const core::Grid& grid, const core::Palette& palette);

}  // namespace pantile::catalogue
