#pragma once

// Writes PNG. The encoder is our own, on zlib through Qt: Qt's writer turns a palette of greys into
// a grey picture, which loses the palette, and adds the screen's resolution, which varies.
// Source: W3C, 'Portable Network Graphics (PNG) Specification', third edition.

#include <cstdint>
#include <vector>

#include "core/grid.h"
#include "core/palette.h"
#include "core/pixels.h"
#include "core/result.h"

namespace pantile::image_files {

/// An indexed PNG with the palette in its order and every index as it is; the transparent entry
/// keeps its colour, with alpha 0. Equal input gives equal bytes.
/// Errors: InvalidInput if an index lies outside the palette.
core::Result<std::vector<std::uint8_t>> encodePng(const core::Grid& grid,
                                                  const core::Palette& palette);

/// A PNG of true colours, with alpha if any pixel is not opaque. Equal input gives equal bytes.
/// Errors: InvalidInput if the pixels do not fill the size; TooLarge beyond the limits of
/// read_image.h.
core::Result<std::vector<std::uint8_t>> encodePng(const core::Pixels& pixels);

}  // namespace pantile::image_files
