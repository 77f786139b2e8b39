#include "board/load_layout.h"

#include <zlib.h>

namespace pantile::board::layout {

std::uint32_t checksumOf(std::span<const std::uint8_t> bytes) {
    return static_cast<std::uint32_t>(crc32_z(0, bytes.data(), bytes.size()));
}

}  // namespace pantile::board::layout
