#include "desktop/theme/contrast.h"

#include <algorithm>

#include "core/colour_spaces.h"

namespace pantile::desktop {

double relativeLuminance(core::Rgb8 colour) {
    const core::LinearRgb linear = core::toLinear(colour);
    return 0.2126 * linear.r + 0.7152 * linear.g + 0.0722 * linear.b;
}

double contrastRatio(core::Rgb8 a, core::Rgb8 b) {
    constexpr double kGlare = 0.05;  // The light that a screen throws back, by the definition.
    const double first = relativeLuminance(a) + kGlare;
    const double second = relativeLuminance(b) + kGlare;
    return std::max(first, second) / std::min(first, second);
}

}  // namespace pantile::desktop
