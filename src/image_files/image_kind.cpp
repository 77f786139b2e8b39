#include "image_files/image_kind.h"

#include <algorithm>
#include <cstddef>
#include <string_view>

#include "image_files/png_chunks.h"
#include "image_files/svg_check.h"

namespace pantile::image_files {
namespace {

// `signature` at `offset` of `bytes`; a '?' in it stands for any byte.
bool hasSignature(std::span<const std::uint8_t> bytes, std::string_view signature,
                  std::size_t offset = 0) {
    if (bytes.size() < offset + signature.size()) return false;
    return std::equal(signature.begin(), signature.end(),
                      bytes.begin() + static_cast<std::ptrdiff_t>(offset),
                      [](char s, auto b) { return s == '?' || static_cast<std::uint8_t>(s) == b; });
}

}  // namespace

std::optional<ImageKind> imageKindOf(std::span<const std::uint8_t> bytes) {
    if (hasSignature(bytes, "\x89PNG\r\n\x1a\n")) return ImageKind::Png;
    if (hasSignature(bytes, "\xff\xd8\xff")) return ImageKind::Jpeg;
    if (hasSignature(bytes, "GIF8?a")) return ImageKind::Gif;
    if (hasSignature(bytes, "RIFF????WEBP")) return ImageKind::WebP;
    // "BM" alone begins many a text; the four reserved bytes of a bitmap's header are 0.
    if (hasSignature(bytes, "BM") && hasSignature(bytes, std::string_view("\0\0\0\0", 4), 6))
        return ImageKind::Bmp;
    if (isSvg(bytes)) return ImageKind::Svg;
    return std::nullopt;
}

const char* qtFormatName(ImageKind kind) {
    switch (kind) {
        case ImageKind::Png:
            return "png";
        case ImageKind::Jpeg:
            return "jpeg";
        case ImageKind::Gif:
            return "gif";
        case ImageKind::Bmp:
            return "bmp";
        case ImageKind::WebP:
            return "webp";
        case ImageKind::Svg:
            return "svg";
    }
    return "";
}

bool isIndexedPng(std::span<const std::uint8_t> bytes) {
    // PNG (W3C, third edition) section 11.2.1: IHDR comes first; its colour type is byte 25.
    constexpr std::size_t kColourTypeAt = 25;
    return imageKindOf(bytes) == ImageKind::Png && bytes.size() > kColourTypeAt &&
           PngColourType{bytes[kColourTypeAt]} == PngColourType::Indexed;
}

}  // namespace pantile::image_files
