#include "codec/checksum.h"

#include <zlib.h>

namespace pantile::codec {

std::uint32_t crc32Of(std::string_view bytes, std::uint32_t before) {
    // zlib's type for a byte; a char may be read as one.
    const auto* data = reinterpret_cast<const Bytef*>(bytes.data());
    return static_cast<std::uint32_t>(crc32_z(before, data, bytes.size()));
}

std::uint32_t crc32Of(std::span<const std::uint8_t> bytes) {
    return static_cast<std::uint32_t>(crc32_z(0, bytes.data(), bytes.size()));
}

CrcShift::CrcShift(std::size_t bytesBehind)
    : m_operator(static_cast<std::uint32_t>(crc32_combine_gen(static_cast<z_off_t>(bytesBehind)))) {
}

std::uint32_t CrcShift::operator()(std::uint32_t change) const {
    return static_cast<std::uint32_t>(crc32_combine_op(change, 0, m_operator));
}

}  // namespace pantile::codec
