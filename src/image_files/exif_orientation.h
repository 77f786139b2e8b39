#pragma once

// Which way up a picture is to be shown, as cameras note it in EXIF, for the formats whose reader
// does not look: PNG (eXIf) and WebP (EXIF). Sources: CIPA DC-008 (Exif 2.32), section 4.6.4; W3C
// PNG, third edition, section 11.3.2.10; WebP container specification, 'Extended File Format'.

#include <cstdint>
#include <span>

#include "core/pixels.h"
#include "image_files/image_kind.h"

namespace pantile::image_files {

/// Exif's number 1..8; 1, as it is, if the file says nothing or nothing that makes sense, or is of
/// another kind.
int exifOrientation(ImageKind kind, std::span<const std::uint8_t> bytes);

/// `picture`, pixels and indices, as Exif's `orientation` 1..8 says it is to be shown.
core::Picture turnedUpright(core::Picture picture, int orientation);

}  // namespace pantile::image_files
