#include "image_files/write_png.h"

#include <algorithm>
#include <array>
#include <cstddef>
#include <span>
#include <string>
#include <string_view>

#include <QByteArray>

#include "image_files/png_chunks.h"
#include "image_files/read_image.h"

namespace pantile::image_files {
namespace {

using core::Error;
using core::ErrorKind;
using core::Result;
using Buffer = std::vector<std::uint8_t>;

void appendBigEndian(Buffer& out, std::uint32_t value) {
    for (const unsigned shift : {24U, 16U, 8U, 0U})
        out.push_back(static_cast<std::uint8_t>(value >> shift));
}

void appendChunk(Buffer& out, std::string_view name, std::span<const std::uint8_t> data) {
    appendBigEndian(out, static_cast<std::uint32_t>(data.size()));
    const std::size_t begin = out.size();
    out.insert(out.end(), name.begin(), name.end());
    out.insert(out.end(), data.begin(), data.end());
    appendBigEndian(out, pngChunkCrc(std::span(out).subspan(begin)));
}

Buffer beginPng(core::Size size, int bitDepth, PngColourType colourType) {
    Buffer out{0x89, 'P', 'N', 'G', '\r', '\n', 0x1A, '\n'};
    Buffer header;
    appendBigEndian(header, static_cast<std::uint32_t>(size.width));
    appendBigEndian(header, static_cast<std::uint32_t>(size.height));
    header.push_back(static_cast<std::uint8_t>(bitDepth));
    header.push_back(static_cast<std::uint8_t>(colourType));
    header.insert(header.end(), {0, 0, 0});  // deflate, the five row filters, no interlace
    appendChunk(out, "IHDR", header);
    return out;
}

void endPng(Buffer& out, const Buffer& rows) {
    constexpr int kBestCompression = 9;
    constexpr qsizetype kSizePrefix = 4;  // qCompress puts the length before zlib's stream
    const QByteArray packed =
        qCompress(rows.data(), static_cast<qsizetype>(rows.size()), kBestCompression);
    const auto* begin = reinterpret_cast<const std::uint8_t*>(packed.constData());
    appendChunk(out, "IDAT",
                std::span(begin, static_cast<std::size_t>(packed.size())).subspan(kSizePrefix));
    appendChunk(out, "IEND", {});
}

// The fewest bits that PNG allows for as many colours.
int bitDepthFor(int colours) {
    if (colours <= 2) return 1;
    if (colours <= 4) return 2;
    return colours <= 16 ? 4 : 8;
}

constexpr std::uint8_t kNoFilter = 0;

// Cells packed from the high bits of each byte down, each row begun anew (PNG section 7.2).
Buffer packedRows(const core::Grid& grid, int bitDepth) {
    Buffer rows;
    for (int y = 0; y < grid.height(); ++y) {
        rows.push_back(kNoFilter);
        int freeBits = 0;
        for (int x = 0; x < grid.width(); ++x) {
            if (freeBits == 0) {
                rows.push_back(0);
                freeBits = 8;
            }
            freeBits -= bitDepth;
            rows.back() = static_cast<std::uint8_t>(rows.back() | (grid.at(x, y) << freeBits));
        }
    }
    return rows;
}

Buffer plainRows(const core::Pixels& pixels, bool withAlpha) {
    Buffer rows;
    rows.reserve(pixels.pixels.size() * 4 + static_cast<std::size_t>(pixels.size.height));
    for (int y = 0; y < pixels.size.height; ++y) {
        rows.push_back(kNoFilter);
        for (int x = 0; x < pixels.size.width; ++x) {
            const core::Rgba8& pixel = pixels.at(x, y);
            rows.insert(rows.end(), {pixel.r, pixel.g, pixel.b});
            if (withAlpha) rows.push_back(pixel.a);
        }
    }
    return rows;
}

Result<void> checkPixels(const core::Pixels& pixels) {
    const std::string sides =
        std::to_string(pixels.size.width) + "x" + std::to_string(pixels.size.height);
    const std::int64_t count = std::int64_t{pixels.size.width} * pixels.size.height;
    if (pixels.size.width < 1 || pixels.size.height < 1 ||
        pixels.pixels.size() != static_cast<std::size_t>(count))
        return Error{
            ErrorKind::InvalidInput,
            std::to_string(pixels.pixels.size()) + " pixels do not fill a picture of " + sides,
            "give one pixel for each place"};
    if (pixels.size.width > kMaxImageSide || pixels.size.height > kMaxImageSide ||
        count > kMaxImagePixels)
        return Error{ErrorKind::TooLarge, "a picture of " + sides + " pixels is too large to write",
                     "choose a smaller one"};
    return {};
}

}  // namespace

Result<Buffer> encodePng(const core::Grid& grid, const core::Palette& palette) {
    if (grid.largestIndex() >= palette.size())
        return Error{ErrorKind::InvalidInput,
                     "index " + std::to_string(grid.largestIndex()) +
                         " lies outside the palette of " + std::to_string(palette.size()) +
                         " colours",
                     "use the palette that belongs to the grid"};
    const int bitDepth = bitDepthFor(palette.size());
    Buffer out = beginPng(grid.size(), bitDepth, PngColourType::Indexed);
    Buffer colours;
    for (const core::Rgb8 colour : palette.colours())
        colours.insert(colours.end(), {colour.r, colour.g, colour.b});
    appendChunk(out, "PLTE", colours);
    if (palette.transparent()) {
        Buffer alphas(std::size_t{*palette.transparent()} + 1, 255);
        alphas.back() = 0;
        appendChunk(out, "tRNS", alphas);
    }
    endPng(out, packedRows(grid, bitDepth));
    return out;
}

Result<Buffer> encodePng(const core::Pixels& pixels) {
    PANTILE_RETURN_IF_ERROR(checkPixels(pixels));
    const bool withAlpha =
        std::ranges::any_of(pixels.pixels, [](const core::Rgba8& pixel) { return pixel.a != 255; });
    Buffer out = beginPng(
        pixels.size, 8, withAlpha ? PngColourType::TrueColourWithAlpha : PngColourType::TrueColour);
    endPng(out, plainRows(pixels, withAlpha));
    return out;
}

}  // namespace pantile::image_files
