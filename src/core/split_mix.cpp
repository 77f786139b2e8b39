#include "core/split_mix.h"

#include <cassert>

namespace pantile::core {

std::uint64_t SplitMix64::next() {
    constexpr std::uint64_t kGoldenGamma = 0x9E3779B97F4A7C15U;
    m_state += kGoldenGamma;
    const std::uint64_t once = (m_state ^ (m_state >> 30U)) * 0xBF58476D1CE4E5B9U;
    const std::uint64_t twice = (once ^ (once >> 27U)) * 0x94D049BB133111EBU;
    return twice ^ (twice >> 31U);
}

std::uint64_t SplitMix64::below(std::uint64_t count) {
    assert(count > 0);
    // 2^64 modulo count: so many numbers from 0 up have no place in whole rounds of count.
    const std::uint64_t surplus = (0 - count) % count;
    std::uint64_t number = next();
    while (number < surplus) number = next();
    return number % count;
}

}  // namespace pantile::core
