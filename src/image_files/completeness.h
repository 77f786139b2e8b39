#pragma once

// Finds pictures that were cut short before a decoder sees them: some decoders fill the missing
// part with grey or black instead of failing, others write on standard error.

#include <cstdint>
#include <span>

#include "image_files/image_kind.h"

namespace pantile::image_files {

/// False if the file's own structure says that bytes are missing at its end. Formats whose decoder
/// fails by itself on a cut file (WebP, SVG) are always true here.
bool isWhole(ImageKind kind, std::span<const std::uint8_t> bytes);

}  // namespace pantile::image_files
