#include "image_files/completeness.h"

#include <cstddef>
#include <cstdlib>

#include "image_files/png_chunks.h"

namespace pantile::image_files {
namespace {

using Bytes = std::span<const std::uint8_t>;

std::uint32_t littleEndian(Bytes bytes, std::size_t offset, std::size_t count) {
    std::uint32_t value = 0;
    for (std::size_t i = 0; i < count && offset + i < bytes.size(); ++i)
        value |= std::uint32_t{bytes[offset + i]} << (8 * i);
    return value;
}

// ITU-T T.81, annex B: segments with a length lead to the scan (SOS); after it the picture is whole
// once the end marker (EOI) comes. Thumbnails with an end marker of their own lie inside segments.
bool isWholeJpeg(Bytes bytes) {
    constexpr std::uint8_t kScan = 0xDA;
    constexpr std::uint8_t kEnd = 0xD9;
    std::size_t at = 2;
    while (at + 4 <= bytes.size() && bytes[at] == 0xFF && bytes[at + 1] != kScan) {
        if (bytes[at + 1] == 0xFF) {  // a fill byte
            ++at;
            continue;
        }
        at += 2 + (std::size_t{bytes[at + 2]} << 8U) + bytes[at + 3];
    }
    for (; at + 1 < bytes.size(); ++at) {
        if (bytes[at] == 0xFF && bytes[at + 1] == kEnd) return true;
    }
    return false;
}

// GIF89a specification, sections 18 to 27: blocks up to the trailer 0x3B. The first picture alone
// is read, so it is enough that its own blocks are all there.
bool isWholeGif(Bytes bytes) {
    constexpr std::uint8_t kExtension = 0x21;
    constexpr std::uint8_t kPicture = 0x2C;
    const auto tableBytes = [](std::uint8_t flags) {
        return (flags & 0x80U) != 0 ? std::size_t{3} << ((flags & 7U) + 1) : 0;
    };
    const auto skipSubBlocks = [&bytes](std::size_t at) {
        while (at < bytes.size() && bytes[at] != 0) at += std::size_t{1} + bytes[at];
        return at + 1;
    };
    if (bytes.size() < 13) return false;
    std::size_t at = 13 + tableBytes(bytes[10]);
    while (at < bytes.size() && bytes[at] == kExtension) at = skipSubBlocks(at + 2);
    if (at + 10 > bytes.size() || bytes[at] != kPicture) return false;
    at += 10 + tableBytes(bytes[at + 9]);
    return skipSubBlocks(at + 1) <= bytes.size();
}

// Rows of an uncompressed bitmap are padded to four bytes and all must be there.
bool isWholeBmp(Bytes bytes) {
    constexpr std::uint32_t kOldHeaderBytes = 12;
    constexpr std::uint32_t kPlain = 0;
    constexpr std::uint32_t kPlainWithMasks = 3;
    if (bytes.size() < 34) return false;
    const bool old = littleEndian(bytes, 14, 4) == kOldHeaderBytes;
    const std::uint32_t compression = old ? kPlain : littleEndian(bytes, 30, 4);
    if (compression != kPlain && compression != kPlainWithMasks) return true;
    const std::uint64_t dataAt = littleEndian(bytes, 10, 4);
    const std::uint64_t width = littleEndian(bytes, 18, old ? 2 : 4);
    const auto signedHeight =
        static_cast<std::int32_t>(littleEndian(bytes, old ? 20 : 22, old ? 2 : 4));
    const auto height = static_cast<std::uint64_t>(std::llabs(signedHeight));
    const std::uint64_t bitsPerPixel = littleEndian(bytes, old ? 24 : 28, 2);
    const std::uint64_t rowBytes = (width * bitsPerPixel + 31) / 32 * 4;
    return rowBytes <= bytes.size() && dataAt + rowBytes * height <= bytes.size();
}

}  // namespace

bool isWhole(ImageKind kind, Bytes bytes) {
    switch (kind) {
        case ImageKind::Jpeg:
            return isWholeJpeg(bytes);
        case ImageKind::Gif:
            return isWholeGif(bytes);
        case ImageKind::Bmp:
            return isWholeBmp(bytes);
        case ImageKind::Png:
            return isWholePng(bytes);
        case ImageKind::WebP:
        case ImageKind::Svg:
            return true;
    }
    return true;
}

}  // namespace pantile::image_files
