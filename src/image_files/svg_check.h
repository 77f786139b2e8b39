#pragma once

// Drawings in SVG: what may be handed to Qt's reader. It would open files that a drawing names,
// and a few hundred bytes can ask it for hours of work; both are found out here beforehand.
// Source: W3C, 'Scalable Vector Graphics (SVG) 1.1', second edition.

#include <cstdint>
#include <span>
#include <string_view>

#include "core/result.h"

namespace pantile::image_files {

/// True if the first element is 'svg'. What may stand before it: a byte order mark, white space,
/// an XML declaration and comments; or the document type says it.
bool isSvg(std::span<const std::uint8_t> bytes);

/// Errors: Corrupt if it is not well formed; TooLarge beyond bounds of bytes, elements, depth or
/// repeated parts; Unsupported if it has text, dashes or embedded pictures, entities of its own, or
/// refers to anything outside itself.
core::Result<void> checkSvg(std::span<const std::uint8_t> bytes, std::string_view name);

}  // namespace pantile::image_files
