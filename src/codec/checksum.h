#pragma once

// CRC-32 as in RFC 1952, section 8.

#include <cstdint>
#include <string_view>

namespace pantile::codec {

std::uint32_t crc32Of(std::string_view bytes);

}  // namespace pantile::codec
