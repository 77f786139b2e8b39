#include "codec/bit_coder.h"

#include <algorithm>
#include <bit>

namespace pantile::codec {
namespace {

constexpr int kByteBits = 8;
constexpr int kStateBytes = 8;
constexpr int kTopShift = 56;
constexpr Probability kLeastProbability = 24;
constexpr int kMostCountBits = 16;

}  // namespace

BitCoder::BitCoder(std::span<const std::uint8_t> bytes) : m_reads(true), m_bytes(bytes) {
    for (int i = 0; i < kStateBytes; ++i) m_value = m_value << kByteBits | nextByte();
}

std::uint8_t BitCoder::nextByte() {
    return m_next < m_bytes.size() ? m_bytes[m_next++] : std::uint8_t{0};
}

bool BitCoder::code(bool bit, Probability yes) {
    const Probability kept = std::clamp(yes, kLeastProbability, kCertain - kLeastProbability);
    const std::uint64_t middle = m_low + ((m_high - m_low) >> kProbabilityBits) * kept;
    if (m_reads) bit = m_value <= middle;
    if (bit) {
        m_high = middle;
    } else {
        m_low = middle + 1;
    }
    while ((m_low ^ m_high) >> kTopShift == 0) shiftOut();
    return bit;
}

void BitCoder::shiftOut() {
    m_written.push_back(static_cast<std::uint8_t>(m_low >> kTopShift));
    m_low <<= kByteBits;
    m_high = m_high << kByteBits | 0xFFU;
    if (m_reads) m_value = m_value << kByteBits | nextByte();
}

std::uint32_t BitCoder::codeNumber(std::uint32_t value, int bits) {
    std::uint32_t coded = 0;
    for (int bit = bits - 1; bit >= 0; --bit) {
        const bool set = codeEven((value >> static_cast<unsigned>(bit) & 1U) != 0);
        coded = coded << 1U | (set ? 1U : 0U);
    }
    return coded;
}

std::uint32_t BitCoder::codeCount(std::uint32_t value) {
    int bits = 1;
    while (bits < kMostCountBits && codeEven(static_cast<int>(std::bit_width(value)) > bits))
        ++bits;
    if (bits == 1) return 1;
    const std::uint32_t top = 1U << static_cast<unsigned>(bits - 1);
    return top | codeNumber(value & (top - 1), bits - 1);
}

std::vector<std::uint8_t> BitCoder::finish() const {
    std::vector<std::uint8_t> bytes = m_written;
    // The shortest tail whose number, with zeros behind it, lies between low and high.
    for (int count = 0; count <= kStateBytes; ++count) {
        const int cut = kByteBits * (kStateBytes - count);
        const std::uint64_t mask = cut >= 64 ? ~std::uint64_t{0} : (std::uint64_t{1} << cut) - 1;
        if (m_low > ~mask && (m_low & mask) != 0) continue;  // Rounding up would run over.
        const std::uint64_t tail = (m_low & mask) == 0 ? m_low : (m_low | mask) + 1;
        if (tail > m_high || tail < m_low) continue;
        for (int i = 0; i < count; ++i) {
            bytes.push_back(static_cast<std::uint8_t>(tail >> (kTopShift - kByteBits * i)));
        }
        break;
    }
    while (!bytes.empty() && bytes.back() == 0) bytes.pop_back();
    return bytes;
}

}  // namespace pantile::codec
