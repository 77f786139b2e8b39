#pragma once

// Reads what a JPEG file says of its picture before decoding, for taking enlarged art back.

#include <cstdint>
#include <optional>
#include <span>

#include "core/coefficient_planes.h"

namespace pantile::image_files {

/// Larger pictures are not read: small art is meant.
inline constexpr int kMaxPlanesSide = 1536;

/// Nothing if the file is damaged, cut short, larger than that, or not of Y', Cb and Cr in eight
/// bits with luma at full and chroma at full or half resolution.
std::optional<core::CoefficientPlanes> readJpegPlanes(std::span<const std::uint8_t> bytes);

}  // namespace pantile::image_files
