#pragma once

// SplitMix64: the tests' seeded random numbers, the same on every machine.
// Source: G. Steele, D. Lea, C. Flood, 'Fast splittable pseudorandom number generators', OOPSLA
// 2014.

#include <cstdint>

namespace pantile::tests {

class Random {
public:
    explicit Random(std::uint64_t seed) : m_state(seed) {}

    std::uint64_t next() {
        m_state += 0x9E3779B97F4A7C15U;
        std::uint64_t z = m_state;
        z = (z ^ (z >> 30U)) * 0xBF58476D1CE4E5B9U;
        z = (z ^ (z >> 27U)) * 0x94D049BB133111EBU;
        return z ^ (z >> 31U);
    }

    /// A number from least to most, both included.
    int between(int least, int most) {
        const auto span = static_cast<std::uint64_t>(most - least) + 1;
        return least + static_cast<int>(next() % span);
    }

private:
    std::uint64_t m_state;
};

}  // namespace pantile::tests
