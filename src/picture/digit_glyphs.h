#pragma once

// Digits of 3x5 pixels, our own, for pictures that carry numbers: no font is asked for.

#include <cstdint>
#include <string_view>

#include "core/geometry.h"
#include "core/pixels.h"

namespace pantile::picture {

/// The size of `digits` when drawn with pixels of scale x scale.
core::Size digitsSize(std::string_view digits, int scale);

/// Draws `digits` ('0' to '9'; others leave their place blank) with the top left corner at `at`.
/// What lies outside the picture is left out.
void drawDigits(core::Pixels& pixels, core::Point at, std::string_view digits, int scale,
                core::Rgba8 ink);

}  // namespace pantile::picture
