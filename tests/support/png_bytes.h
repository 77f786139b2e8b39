#pragma once

// PNG files made by hand, right or wrong on purpose: chunk by chunk, with stored (not packed) rows.
// Sources: W3C, 'Portable Network Graphics (PNG) Specification', third edition; RFC 1950; RFC 1951.

#include <cstddef>
#include <cstdint>
#include <string_view>
#include <vector>

namespace pantile::tests {

using Bytes = std::vector<std::uint8_t>;

inline void appendBigEndian(Bytes& out, std::uint32_t value) {
    for (const unsigned shift : {24U, 16U, 8U, 0U})
        out.push_back(static_cast<std::uint8_t>(value >> shift));
}

inline Bytes pngChunk(std::string_view name, const Bytes& data) {
    Bytes body(name.begin(), name.end());
    body.insert(body.end(), data.begin(), data.end());
    std::uint32_t crc = 0xFFFFFFFF;
    for (const std::uint8_t byte : body) {
        crc ^= byte;
        for (int bit = 0; bit < 8; ++bit)
            crc = (crc & 1U) != 0 ? (crc >> 1U) ^ 0xEDB88320U : crc >> 1U;
    }
    Bytes chunk;
    appendBigEndian(chunk, static_cast<std::uint32_t>(data.size()));
    chunk.insert(chunk.end(), body.begin(), body.end());
    appendBigEndian(chunk, ~crc);
    return chunk;
}

/// A zlib stream of one stored block; `data` must be shorter than 65536 bytes.
inline Bytes storedStream(const Bytes& data) {
    const auto low = static_cast<std::uint8_t>(data.size() & 0xFFU);
    const auto high = static_cast<std::uint8_t>(data.size() >> 8U);
    Bytes stream{0x78,
                 0x01,
                 1,
                 low,
                 high,
                 static_cast<std::uint8_t>(~low),
                 static_cast<std::uint8_t>(~high)};
    stream.insert(stream.end(), data.begin(), data.end());
    std::uint32_t a = 1;
    std::uint32_t b = 0;
    for (const std::uint8_t byte : data) {
        a = (a + byte) % 65521;
        b = (b + a) % 65521;
    }
    appendBigEndian(stream, b << 16U | a);
    return stream;
}

struct PngParts {
    std::uint32_t width = 1;
    std::uint32_t height = 1;
    std::uint8_t bitDepth = 8;
    std::uint8_t colourType = 2;  ///< 0 grey, 2 true colour, 3 indexed, 4 and 6 those with alpha
    Bytes palette;                ///< PLTE, if not empty
    Bytes alphas;                 ///< tRNS, if not empty
    Bytes rows;                   ///< each led by its filter byte
};

inline Bytes pngOf(const PngParts& parts) {
    Bytes png{0x89, 'P', 'N', 'G', '\r', '\n', 0x1A, '\n'};
    const auto append = [&png](std::string_view name, const Bytes& data) {
        const Bytes chunk = pngChunk(name, data);
        png.insert(png.end(), chunk.begin(), chunk.end());
    };
    Bytes header;
    appendBigEndian(header, parts.width);
    appendBigEndian(header, parts.height);
    header.insert(header.end(), {parts.bitDepth, parts.colourType, 0, 0, 0});
    append("IHDR", header);
    if (!parts.palette.empty()) append("PLTE", parts.palette);
    if (!parts.alphas.empty()) append("tRNS", parts.alphas);
    append("IDAT", storedStream(parts.rows));
    append("IEND", {});
    return png;
}

}  // namespace pantile::tests
