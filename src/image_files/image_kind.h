#pragma once

// What kind of picture file some bytes are, by their content: a name's ending proves nothing.

#include <cstdint>
#include <optional>
#include <span>

namespace pantile::image_files {

/// The kinds that Pantile reads. Kept short on purpose: each is one more reader of hostile bytes.
enum class ImageKind { Png, Jpeg, Gif, Bmp, WebP, Svg };

/// By the signature at the start, or for SVG by the first element; nothing if it is none of them.
std::optional<ImageKind> imageKindOf(std::span<const std::uint8_t> bytes);

/// The word by which Qt's readers know the kind.
const char* qtFormatName(ImageKind kind);

/// True for a PNG whose header says that it stores palette indices (colour type 3). A grey PNG of
/// few bits is decoded into a table as well, but has no palette of its own.
bool isIndexedPng(std::span<const std::uint8_t> bytes);

}  // namespace pantile::image_files
