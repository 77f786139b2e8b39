#include "image_files/exif_orientation.h"

#include <algorithm>
#include <cstddef>
#include <string_view>
#include <utility>
#include <vector>

#include "image_files/png_chunks.h"

namespace pantile::image_files {
namespace {

using Bytes = std::span<const std::uint8_t>;

constexpr int kAsItIs = 1;

bool startsWith(Bytes bytes, std::string_view text) {
    return bytes.size() >= text.size() &&
           std::equal(text.begin(), text.end(), bytes.begin(), [](char c, std::uint8_t byte) {
               return static_cast<std::uint8_t>(c) == byte;
           });
}

// TIFF 6.0, section 2: numbers of either order of bytes. What lies beyond the end is 0.
class Tiff {
public:
    explicit Tiff(Bytes bytes) : m_bytes(bytes), m_bigEndian(startsWith(bytes, "MM")) {}

    std::size_t number(std::size_t at, std::size_t count) const {
        if (at > m_bytes.size() || count > m_bytes.size() - at) return 0;
        std::size_t value = 0;
        for (std::size_t i = 0; i < count; ++i)
            value = value << 8U | m_bytes[at + (m_bigEndian ? i : count - 1 - i)];
        return value;
    }

private:
    Bytes m_bytes;
    bool m_bigEndian;
};

int orientationIn(Bytes exif) {
    constexpr std::size_t kEntryBytes = 12;
    constexpr std::size_t kOrientation = 0x0112;
    constexpr std::size_t kShort = 3;
    // Common practice, no source: WebP writers leave JPEG's mark in front.
    constexpr std::string_view kJpegsMark("Exif\0\0", 6);
    if (startsWith(exif, kJpegsMark)) exif = exif.subspan(kJpegsMark.size());
    if (!startsWith(exif, "MM") && !startsWith(exif, "II")) return kAsItIs;
    const Tiff tiff(exif);
    const std::size_t table = tiff.number(4, 4);
    const std::size_t entries = tiff.number(table, 2);
    for (std::size_t i = 0; i < entries; ++i) {
        const std::size_t entry = table + 2 + i * kEntryBytes;
        if (tiff.number(entry, 2) != kOrientation || tiff.number(entry + 2, 2) != kShort) continue;
        const auto orientation = static_cast<int>(tiff.number(entry + 8, 2));
        return orientation >= 1 && orientation <= 8 ? orientation : kAsItIs;
    }
    return kAsItIs;
}

Bytes exifOfPng(Bytes bytes) {
    Bytes rest = bytes.subspan(std::min(kPngSignatureBytes, bytes.size()));
    for (PngChunk chunk = takePngChunk(rest); !chunk.name.empty(); chunk = takePngChunk(rest)) {
        if (chunk.name == "eXIf") return chunk.data;
    }
    return {};
}

Bytes exifOfWebP(Bytes bytes) {
    constexpr std::size_t kHeadBytes = 12;  // RIFF, its length, WEBP
    constexpr std::size_t kFrameBytes = 8;
    Bytes rest = bytes.subspan(std::min(kHeadBytes, bytes.size()));
    while (rest.size() >= kFrameBytes) {
        std::size_t length = 0;
        for (std::size_t i = 0; i < 4; ++i) length |= std::size_t{rest[4 + i]} << (8 * i);
        const Bytes data = rest.subspan(kFrameBytes);
        if (length > data.size()) return {};
        if (startsWith(rest, "EXIF")) return data.first(length);
        rest = data.subspan(std::min(length + length % 2, data.size()));
    }
    return {};
}

struct Place {
    int x = 0;
    int y = 0;
};

// Where what is shown at `shown` lies in a picture of `size` as stored.
Place storedPlace(Place shown, core::Size size, int orientation) {
    const bool sidesSwapped = orientation >= 5;
    const bool fromRight = orientation == 2 || orientation == 3 || orientation >= 7;
    const bool fromBottom =
        orientation == 3 || orientation == 4 || orientation == 6 || orientation == 7;
    if (sidesSwapped) std::swap(shown.x, shown.y);
    return {fromRight ? size.width - 1 - shown.x : shown.x,
            fromBottom ? size.height - 1 - shown.y : shown.y};
}

template <typename T>
std::vector<T> turned(const std::vector<T>& stored, core::Size size, int orientation) {
    const core::Size shown = orientation >= 5 ? core::Size{size.height, size.width} : size;
    std::vector<T> result;
    result.reserve(stored.size());
    for (int y = 0; y < shown.height; ++y) {
        for (int x = 0; x < shown.width; ++x) {
            const Place from = storedPlace({x, y}, size, orientation);
            result.push_back(
                stored[static_cast<std::size_t>(from.y) * static_cast<std::size_t>(size.width) +
                       static_cast<std::size_t>(from.x)]);
        }
    }
    return result;
}

}  // namespace

int exifOrientation(ImageKind kind, Bytes bytes) {
    if (kind == ImageKind::Png) return orientationIn(exifOfPng(bytes));
    if (kind == ImageKind::WebP) return orientationIn(exifOfWebP(bytes));
    return kAsItIs;
}

core::Picture turnedUpright(core::Picture picture, int orientation) {
    if (orientation == kAsItIs) return picture;
    const core::Size size = picture.pixels.size;
    picture.pixels.pixels = turned(picture.pixels.pixels, size, orientation);
    if (picture.indexed)
        picture.indexed->indices = turned(picture.indexed->indices, size, orientation);
    if (orientation >= 5) picture.pixels.size = {size.height, size.width};
    return picture;
}

}  // namespace pantile::image_files
