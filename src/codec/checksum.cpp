#include "codec/checksum.h"

#include <zlib.h>

namespace pantile::codec {

std::uint32_t crc32Of(std::string_view bytes) {
    // zlib's type for a byte; a char may be read as one.
    const auto* data = reinterpret_cast<const Bytef*>(bytes.data());
    return static_cast<std::uint32_t>(crc32_z(0, data, bytes.size()));
}

}  // namespace pantile::codec
