#include "board/script_bits.h"

#include <bit>
#include <cstdlib>

namespace pantile::board {
namespace {

constexpr std::size_t kBitsOfByte = 8;

/// A number plus 2^parameter has this many bits behind its first one.
int bitsBehindFirst(unsigned number, int parameter) {
    return static_cast<int>(std::bit_width(number + (1U << parameter))) - 1;
}

}  // namespace

int numberBits(unsigned number, int parameter) {
    return 2 * bitsBehindFirst(number, parameter) + 1 - parameter;
}

void ScriptBitWriter::bits(unsigned value, int count) {
    while (count-- > 0) bit((value >> count & 1U) != 0);
}

void ScriptBitWriter::number(unsigned number, int parameter) {
    const int behind = bitsBehindFirst(number, parameter);
    bits(0, behind - parameter);
    bits(number + (1U << parameter), behind + 1);
}

void ScriptBitWriter::wayOnAxis(int cells, int parameter) {
    const auto twice = 2 * static_cast<unsigned>(std::abs(cells));
    number(cells > 0 ? twice - 1 : twice, parameter);
}

void ScriptBitWriter::append(const ScriptBitWriter& more) {
    m_bits.insert(m_bits.end(), more.m_bits.begin(), more.m_bits.end());
}

std::vector<std::uint8_t> ScriptBitWriter::bytes() const {
    std::vector<std::uint8_t> bytes((m_bits.size() + kBitsOfByte - 1) / kBitsOfByte);
    for (std::size_t i = 0; i < m_bits.size(); ++i) {
        if (m_bits[i])
            bytes[i / kBitsOfByte] |= static_cast<std::uint8_t>(0x80U >> i % kBitsOfByte);
    }
    return bytes;
}

bool ScriptBitReader::bit() {
    if (byte() >= m_bytes.size()) {
        m_brokeOff = true;
        return false;
    }
    const bool set = (unsigned{m_bytes[byte()]} << m_next % kByteBits & 0x80U) != 0;
    ++m_next;
    return set;
}

unsigned ScriptBitReader::bits(int count) {
    unsigned value = 0;
    while (count-- > 0) value = value << 1U | (bit() ? 1U : 0U);
    return value;
}

unsigned ScriptBitReader::number(int parameter) {
    int behind = parameter;
    while (!bit()) {
        if (++behind > kMostNumberBits) {
            m_brokeOff = true;
            return 0;
        }
    }
    return (1U << behind | bits(behind)) - (1U << parameter);
}

int ScriptBitReader::wayOnAxis(int parameter) {
    const auto twice = static_cast<int>(number(parameter));
    return twice % 2 != 0 ? (twice + 1) / 2 : -(twice / 2);
}

bool ScriptBitReader::tookAll() const {
    if (byte() >= m_bytes.size()) return true;
    if (byte() + 1 < m_bytes.size()) return false;
    return (unsigned{m_bytes.back()} << m_next % kByteBits & 0xFFU) == 0;
}

}  // namespace pantile::board
