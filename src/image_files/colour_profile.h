#pragma once

// Colour profiles that a picture file carries (ICC), applied by Qt. See docs/conversion.md
// section 1.

#include <cstdint>
#include <span>

#include "image_files/image_kind.h"

class QColorTransform;
class QImage;

namespace pantile::image_files {

/// From the values of the file to sRGB; the identity if it carries no profile, one that Qt does
/// not understand, or one that is sRGB to within two levels, whose values are kept as they are.
QColorTransform transformToSrgb(ImageKind kind, std::span<const std::uint8_t> bytes,
                                const QImage& image);

}  // namespace pantile::image_files
