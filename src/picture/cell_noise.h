#pragma once

// Seeded noise within chosen colours: shingle, sand, lichen. See docs/seams-and-colours.md
// section 8.

#include <cstdint>
#include <vector>

#include "core/palette.h"
#include "core/result.h"

namespace pantile::picture {

struct NoiseOptions {
    std::vector<core::PaletteIndex> colours;  ///< Two or more; order and repeats mean nothing.
    int percent = 50;                         ///< 0..100: how many of their cells change.
    std::uint64_t seed = 1;
};

/// Of the cells whose colour is one of the chosen, `percent` in a hundred (to the nearest whole
/// cell, a half up) get another of the chosen colours, each equally likely. All other cells stay.
/// The same grid, options and seed give the same cells on every machine.
/// Errors: InvalidInput if the percentage is out of range, there are fewer than two colours, or an
/// index lies outside the palette.
core::Result<core::Grid> withCellNoise(const core::Grid& grid, const core::Palette& palette,
                                       const NoiseOptions& options);

}  // namespace pantile::picture
