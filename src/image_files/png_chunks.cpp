#include "image_files/png_chunks.h"

#include <algorithm>
#include <array>

namespace pantile::image_files {
namespace {

using Bytes = std::span<const std::uint8_t>;

constexpr std::array<std::uint32_t, 256> makeCrcTable() {
    constexpr std::uint32_t kReversedPolynomial = 0xEDB88320;
    std::array<std::uint32_t, 256> table{};
    for (std::uint32_t byte = 0; byte < table.size(); ++byte) {
        std::uint32_t value = byte;
        for (int bit = 0; bit < 8; ++bit)
            value = (value & 1U) != 0 ? (value >> 1U) ^ kReversedPolynomial : value >> 1U;
        table[byte] = value;
    }
    return table;
}

std::uint32_t bigEndian(Bytes bytes) {
    return std::uint32_t{bytes[0]} << 24U | std::uint32_t{bytes[1]} << 16U |
           std::uint32_t{bytes[2]} << 8U | std::uint32_t{bytes[3]};
}

// PNG section 5.4: a small first letter marks a chunk that a reader may pass over.
bool isCritical(const PngChunk& chunk) {
    return (static_cast<unsigned char>(chunk.name.front()) & 0x20U) == 0;
}

bool isUndamaged(const PngChunk& chunk) {
    const auto* name = reinterpret_cast<const std::uint8_t*>(chunk.name.data());
    return pngChunkCrc({name, chunk.name.size() + chunk.data.size()}) == chunk.storedCrc;
}

// PNG section 11.2.1, table 'Allowed combinations of colour type and bit depth'.
bool isAllowed(PngColourType colourType, std::uint8_t bitDepth) {
    switch (colourType) {
        case PngColourType::Grey:
            return bitDepth == 1 || bitDepth == 2 || bitDepth == 4 || bitDepth == 8 ||
                   bitDepth == 16;
        case PngColourType::Indexed:
            return bitDepth == 1 || bitDepth == 2 || bitDepth == 4 || bitDepth == 8;
        case PngColourType::TrueColour:
        case PngColourType::GreyWithAlpha:
        case PngColourType::TrueColourWithAlpha:
            return bitDepth == 8 || bitDepth == 16;
    }
    return false;
}

}  // namespace

PngChunk takePngChunk(Bytes& rest) {
    constexpr std::size_t kFrameBytes = 12;  // length, name and checksum
    if (rest.size() < kFrameBytes) return {};
    const std::size_t length = bigEndian(rest);
    if (length > rest.size() - kFrameBytes) return {};
    const PngChunk chunk{{reinterpret_cast<const char*>(rest.data()) + 4, 4},
                         rest.subspan(8, length),
                         bigEndian(rest.subspan(8 + length))};
    rest = rest.subspan(kFrameBytes + length);
    return chunk;
}

std::uint32_t pngChunkCrc(Bytes nameAndData) {
    static constexpr std::array<std::uint32_t, 256> kTable = makeCrcTable();
    std::uint32_t crc = 0xFFFFFFFF;
    for (const std::uint8_t byte : nameAndData) crc = (crc >> 8U) ^ kTable[(crc ^ byte) & 0xFFU];
    return ~crc;
}

std::optional<core::Size> pngSize(Bytes bytes) {
    constexpr std::size_t kHeaderBytes = 13;
    constexpr std::uint32_t kMostSide = 0x7FFFFFFF;
    Bytes rest = bytes.subspan(std::min(kPngSignatureBytes, bytes.size()));
    const PngChunk header = takePngChunk(rest);
    if (header.name != "IHDR" || header.data.size() != kHeaderBytes) return std::nullopt;
    const std::uint32_t width = bigEndian(header.data);
    const std::uint32_t height = bigEndian(header.data.subspan(4));
    const bool hasSize = width - 1 < kMostSide && height - 1 < kMostSide;
    const bool isKnown = isAllowed(PngColourType{header.data[9]}, header.data[8]) &&
                         header.data[10] == 0 && header.data[11] == 0 && header.data[12] <= 1;
    if (!hasSize || !isKnown) return std::nullopt;
    return core::Size{static_cast<int>(width), static_cast<int>(height)};
}

bool isWholePng(Bytes bytes) {
    Bytes rest = bytes.subspan(std::min(kPngSignatureBytes, bytes.size()));
    for (PngChunk chunk = takePngChunk(rest); !chunk.name.empty(); chunk = takePngChunk(rest)) {
        if (isCritical(chunk) && !isUndamaged(chunk)) return false;
        if (chunk.name == "IEND") return true;
    }
    return false;
}

}  // namespace pantile::image_files
