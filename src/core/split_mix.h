#pragma once

// Numbers that look random and follow from a seed, the same on every machine. Not for secrets.

#include <cstddef>
#include <cstdint>

namespace pantile::core {

/// Source: G. Steele, D. Lea, C. Flood, 'Fast splittable pseudorandom number generators', OOPSLA
/// 2014, where it is called SplitMix64.
class SplitMix64 {
public:
    explicit SplitMix64(std::uint64_t seed) : m_state(seed) {}

    /// 0 to count - 1, each equally likely; count must not be 0. Numbers that would favour some are
    /// drawn again.
    std::uint64_t below(std::uint64_t count);

    /// The same as a place in a list of `count`.
    std::size_t placeIn(std::size_t count) { return static_cast<std::size_t>(below(count)); }

    /// Any of the 2^64 numbers.
    std::uint64_t next();

private:
    std::uint64_t m_state;
};

}  // namespace pantile::core
