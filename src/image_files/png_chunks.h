#pragma once

// The chunks of a PNG file: what its reader and its writer have in common.
// Source: W3C, 'Portable Network Graphics (PNG) Specification', third edition, section 5.

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string_view>

#include "core/geometry.h"

namespace pantile::image_files {

inline constexpr std::size_t kPngSignatureBytes = 8;

/// Section 11.2.1.
enum class PngColourType : std::uint8_t {
    Grey = 0,
    TrueColour = 2,
    Indexed = 3,
    GreyWithAlpha = 4,
    TrueColourWithAlpha = 6,
};

struct PngChunk {
    std::string_view name;
    std::span<const std::uint8_t> data;
    std::uint32_t storedCrc = 0;
};

/// Splits one chunk off the front of `rest`. One that is cut short has no name.
PngChunk takePngChunk(std::span<const std::uint8_t>& rest);

/// CRC-32 over a chunk's name and data, which must lie behind one another.
std::uint32_t pngChunkCrc(std::span<const std::uint8_t> nameAndData);

/// The size that a PNG tells of itself; nothing if no decoder would take its header
/// (section 11.2.1).
std::optional<core::Size> pngSize(std::span<const std::uint8_t> bytes);

/// Whether all chunks up to the end chunk are there and those that a reader cannot do without are
/// undamaged.
bool isWholePng(std::span<const std::uint8_t> bytes);

}  // namespace pantile::image_files
