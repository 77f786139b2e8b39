#pragma once

// Arithmetic coding of yes/no decisions, each with its probability. Writing and reading go the same
// steps, so one routine that asks a BitCoder is both encoder and decoder. Authority:
// docs/code-format.md, section 14.

#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

#include "codec/logistic.h"

namespace pantile::codec {

class BitCoder {
public:
    /// Writes.
    BitCoder() = default;

    /// Reads `bytes`, which must outlive it; behind their end it reads zeros.
    explicit BitCoder(std::span<const std::uint8_t> bytes);

    bool isReading() const { return m_reads; }

    /// Writing: puts down `bit` and gives it back. Reading: gives the bit that was written here,
    /// whatever `bit` is. `yes` is the probability of true; it is kept away from 0 and 1.
    bool code(bool bit, Probability yes);

    /// A bit that is as likely as not.
    bool codeEven(bool bit) { return code(bit, kCertain / 2); }

    /// `bits` (1..32) of `value` as even bits, the greatest first.
    std::uint32_t codeNumber(std::uint32_t value, int bits);

    /// A number from 1 up as an Elias gamma code of even bits: the smaller, the shorter. Reading,
    /// never gives more than 2^16 - 1.
    std::uint32_t codeCount(std::uint32_t value);

    /// The fewest bytes that say all decisions so far; the last one is not zero. Reading, they are
    /// the bytes that an encoder would have written, to be compared with what was read.
    std::vector<std::uint8_t> finish() const;

private:
    void shiftOut();
    std::uint8_t nextByte();

    bool m_reads = false;
    std::uint64_t m_low = 0;
    std::uint64_t m_high = ~std::uint64_t{0};
    std::uint64_t m_value = 0;  ///< Reading: the eight bytes that m_low and m_high are about.
    std::span<const std::uint8_t> m_bytes;
    std::size_t m_next = 0;
    std::vector<std::uint8_t> m_written;
};

}  // namespace pantile::codec
