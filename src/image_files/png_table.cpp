#include "image_files/png_table.h"

#include <algorithm>
#include <cstddef>
#include <string_view>

namespace pantile::image_files {
namespace {

using Bytes = std::span<const std::uint8_t>;

struct Chunk {
    std::string_view name;
    Bytes data;
};

// Splits one chunk off the front of `rest`. A chunk that is cut short has no name.
Chunk takeChunk(Bytes& rest) {
    constexpr std::size_t kFrameBytes = 12;  // length, name and checksum
    if (rest.size() < kFrameBytes) return {};
    const std::size_t length = std::size_t{rest[0]} << 24U | std::size_t{rest[1]} << 16U |
                               std::size_t{rest[2]} << 8U | std::size_t{rest[3]};
    if (length > rest.size() - kFrameBytes) return {};
    const Chunk chunk{{reinterpret_cast<const char*>(rest.data()) + 4, 4}, rest.subspan(8, length)};
    rest = rest.subspan(kFrameBytes + length);
    return chunk;
}

}  // namespace

std::vector<core::Rgba8> pngTable(Bytes bytes) {
    constexpr std::size_t kSignatureBytes = 8;
    constexpr std::size_t kMostColours = 256;
    std::vector<core::Rgba8> table;
    Bytes rest = bytes.subspan(std::min(kSignatureBytes, bytes.size()));
    for (Chunk chunk = takeChunk(rest); !chunk.name.empty() && chunk.name != "IDAT";
         chunk = takeChunk(rest)) {
        if (chunk.name == "PLTE" && table.empty()) {
            for (std::size_t i = 0; i + 2 < chunk.data.size() && table.size() < kMostColours;
                 i += 3)
                table.push_back({chunk.data[i], chunk.data[i + 1], chunk.data[i + 2], 255});
        } else if (chunk.name == "tRNS") {
            for (std::size_t i = 0; i < std::min(table.size(), chunk.data.size()); ++i)
                table[i].a = chunk.data[i];
        }
    }
    return table;
}

}  // namespace pantile::image_files
