#pragma once

// Reads picture files by Qt's readers; works without any application object. What a file may be and
// how large is decided before anything is decoded. See docs/conversion.md section 1.

#include <cstdint>
#include <filesystem>
#include <span>
#include <string_view>

#include "core/pixels.h"
#include "core/result.h"

namespace pantile::image_files {

inline constexpr std::uint64_t kMaxImageFileBytes = std::uint64_t{256} << 20U;
inline constexpr int kMaxImageSide = 16384;
inline constexpr std::int64_t kMaxImagePixels = std::int64_t{64} << 20U;

/// A drawing in SVG has no pixels of its own: its longer side is drawn with so many.
inline constexpr int kSvgSide = 1024;

/// Reads the first picture in a PNG, JPEG, GIF, BMP, WebP or SVG file, turned as its EXIF says, its
/// colours brought to sRGB if it carries a colour profile.
/// Shape: `indexed` is set for an indexed PNG or BMP, table and indices in the file's own order.
/// Errors: NotFound; Io if it cannot be read; Unsupported if it is a folder, no picture, or a
/// drawing that svg_check.h refuses; Corrupt
/// if it is empty, cut short or damaged; TooLarge if the file or the picture is beyond the limits
/// above.
core::Result<core::Picture> readImageFile(const std::filesystem::path& path);

/// The same for bytes in memory. `name` stands in messages only.
core::Result<core::Picture> readImageBytes(std::span<const std::uint8_t> bytes,
                                           std::string_view name);

}  // namespace pantile::image_files
