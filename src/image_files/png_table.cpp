#include "image_files/png_table.h"

#include <algorithm>
#include <cstddef>

#include "image_files/png_chunks.h"

namespace pantile::image_files {
namespace {

using Bytes = std::span<const std::uint8_t>;

}  // namespace

std::vector<core::Rgba8> pngTable(Bytes bytes) {
    constexpr std::size_t kMostColours = 256;
    std::vector<core::Rgba8> table;
    Bytes rest = bytes.subspan(std::min(kPngSignatureBytes, bytes.size()));
    for (PngChunk chunk = takePngChunk(rest); !chunk.name.empty() && chunk.name != "IDAT";
         chunk = takePngChunk(rest)) {
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
