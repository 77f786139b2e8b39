#pragma once

// Light, colour and sharpness changed between scaling and mapping to a palette. See
// docs/conversion.md section 12.

#include "core/result.h"
#include "picture/linear_picture.h"

namespace pantile::picture {

/// All zeroes and a gamma of 1 change nothing. Applied in the order of the members.
struct Adjustments {
    bool levels = false;  ///< The darkest and lightest cells become black and white.
    double gamma = 1;     ///< 0.1..10: above 1 lightens the middle tones.
    int brightness = 0;   ///< -100..100 percent of the whole range, added.
    int contrast = 0;     ///< -100..100 percent more distance from middle grey.
    int saturation = 0;   ///< -100..100 percent more chroma in OKLab; -100 leaves greys.
    int sharpen = 0;      ///< 0..100 percent more difference from the cells around.

    bool operator==(const Adjustments&) const = default;
};

/// Errors: InvalidInput naming the member that is out of its range.
core::Result<void> checkAdjustments(const Adjustments& adjustments);

/// Invisible cells (alpha 0) stay as they are and have no say. Results are cut to what a screen
/// shows.
LinearPicture adjusted(LinearPicture picture, const Adjustments& adjustments);

}  // namespace pantile::picture
