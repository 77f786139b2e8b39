#pragma once

// The bits of a script, and the numbers written in them. Authority: docs/load-format.md
// section 3.1.

#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

namespace pantile::board {

/// No number is longer than this many bits behind its first one.
inline constexpr int kMostNumberBits = 15;

/// The greatest number of a parameter, which is 0..kMostNumberBits.
constexpr unsigned mostNumber(int parameter) {
    return (2U << kMostNumberBits) - 1 - (1U << parameter);
}

/// How many bits a number takes: exponential Golomb codes.
/// Source: J. Teuhola, 'A compression method for clustered bit-vectors', 1978.
/// Shape: `number` is at most mostNumber(parameter).
int numberBits(unsigned number, int parameter);

class ScriptBitWriter {
public:
    void bit(bool set) { m_bits.push_back(set); }

    /// The lowest `count` bits of `value`, the highest of these first.
    void bits(unsigned value, int count);

    /// Shape: as numberBits.
    void number(unsigned number, int parameter);

    /// 0, 1, -1, 2, -2, .. as the numbers 0, 1, 2, 3, 4, ..
    void wayOnAxis(int cells, int parameter);

    void append(const ScriptBitWriter& more);

    std::size_t size() const { return m_bits.size(); }

    /// Filled up with zeros to whole bytes.
    std::vector<std::uint8_t> bytes() const;

private:
    std::vector<bool> m_bits;
};

/// Behind the end, bits are 0 and the reader has broken off.
class ScriptBitReader {
public:
    /// Shape: `bytes` must outlive it.
    explicit ScriptBitReader(std::span<const std::uint8_t> bytes) : m_bytes(bytes) {}

    bool bit();

    unsigned bits(int count);

    /// 0 if the number is too long; the reader has broken off then too.
    unsigned number(int parameter);

    int wayOnAxis(int parameter);

    bool brokeOff() const { return m_brokeOff; }

    /// Whether nothing is left but zeros in the last byte.
    bool tookAll() const;

    /// The byte that holds the next bit.
    std::size_t byte() const { return m_next / kByteBits; }

private:
    static constexpr std::size_t kByteBits = 8;

    std::span<const std::uint8_t> m_bytes;
    std::size_t m_next = 0;
    bool m_brokeOff = false;
};

}  // namespace pantile::board
