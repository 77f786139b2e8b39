#pragma once

// How well a colour stands out from another.
// Source: W3C, 'Web Content Accessibility Guidelines 2.1', success criteria 1.4.3 and 1.4.11 and
// the definitions of relative luminance and contrast ratio.

#include "core/colour.h"

namespace pantile::desktop {

inline constexpr double kTextContrast = 4.5;  ///< Level AA for text of any size.
inline constexpr double kMarkContrast = 3.0;  ///< Level AA for marks and edges that carry meaning.

/// 0 for black to 1 for white.
double relativeLuminance(core::Rgb8 colour);

/// 1 for equal colours to 21, whichever of the two comes first.
double contrastRatio(core::Rgb8 a, core::Rgb8 b);

}  // namespace pantile::desktop
