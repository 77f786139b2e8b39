#pragma once

// CRC-32 as in RFC 1952, section 8.

#include <cstddef>
#include <cstdint>
#include <span>
#include <string_view>

namespace pantile::codec {

/// `before`: the value of bytes in front of these.
std::uint32_t crc32Of(std::string_view bytes, std::uint32_t before = 0);
std::uint32_t crc32Of(std::span<const std::uint8_t> bytes);

/// What a change of a text's CRC-32 becomes when more bytes, the same in both cases, follow:
/// crc(xb) ^ crc(yb) = CrcShift(size of b)(crc(x) ^ crc(y)) for x and y of one size, because
/// CRC-32 is linear. So a change in one place is known without going over the rest.
class CrcShift {
public:
    explicit CrcShift(std::size_t bytesBehind);

    std::uint32_t operator()(std::uint32_t change) const;

private:
    std::uint32_t m_operator;
};

}  // namespace pantile::codec
