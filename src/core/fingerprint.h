#pragma once

// FNV-1a, 64 bits: a fingerprint that tells contents apart and finds accidental damage. It is not a
// guard against forgery; where a match matters, the contents themselves are compared.
// Source: G. Fowler, L. Noll, K.-P. Vo, D. Eastlake, 'The FNV Non-Cryptographic Hash Algorithm'.

#include <cstdint>
#include <span>
#include <string>

namespace pantile::core {

/// Stored in libraries and codes: the way it is computed never changes.
struct Fingerprint {
    std::uint64_t value = 0;
    auto operator<=>(const Fingerprint&) const = default;
};

/// Sixteen lower-case hexadecimal digits.
std::string toHex(Fingerprint fingerprint);

class FingerprintBuilder {
public:
    void addByte(std::uint8_t byte) { m_state = (m_state ^ byte) * 0x100000001B3U; }

    void addBytes(std::span<const std::uint8_t> bytes) {
        for (const std::uint8_t byte : bytes) addByte(byte);
    }

    /// Its eight bytes, least first.
    void addNumber(std::int64_t number) {
        for (unsigned shift = 0; shift < 64; shift += 8) {
            addByte(static_cast<std::uint8_t>(static_cast<std::uint64_t>(number) >> shift));
        }
    }

    Fingerprint finish() const { return {m_state}; }

private:
    std::uint64_t m_state = 0xCBF29CE484222325U;
};

}  // namespace pantile::core
