#pragma once

// The order in which the places of a tile fill up, for ordered dithers. See docs/conversion.md
// section 7.2.

#include <array>
#include <cstddef>
#include <cstdint>
#include <span>

namespace pantile::picture {

/// Shape: side x side ranks, row by row, each of 0 .. side² - 1 once.
struct ThresholdMask {
    int side = 1;
    std::span<const std::uint16_t> ranks;

    int count() const { return side * side; }

    /// The mask repeats over the whole plane; x and y must not be negative.
    int rankAt(int x, int y) const {
        const int at = (y % side) * side + x % side;
        return ranks[static_cast<std::size_t>(at)];
    }
};

/// Shape: 2^Bits x 2^Bits.
/// Source: B. E. Bayer, 'An optimum method for two-level rendition of continuous-tone pictures',
/// IEEE Int. Conf. on Communications, 1973: M(2n) = [[4M, 4M+2], [4M+3, 4M+1]], M(1) = [0].
template <unsigned Bits>
constexpr auto makeBayerRanks() {
    constexpr unsigned kSide = 1U << Bits;
    std::array<std::uint16_t, std::size_t{kSide} * kSide> ranks{};
    for (unsigned y = 0; y < kSide; ++y) {
        for (unsigned x = 0; x < kSide; ++x) {
            unsigned rank = 0;
            for (unsigned bit = 0; bit < Bits; ++bit)
                rank = 4 * rank + 2 * (((x ^ y) >> bit) & 1U) + ((y >> bit) & 1U);
            ranks[y * kSide + x] = static_cast<std::uint16_t>(rank);
        }
    }
    return ranks;
}

inline constexpr auto kBayer2Ranks = makeBayerRanks<1>();
inline constexpr auto kBayer4Ranks = makeBayerRanks<2>();
inline constexpr auto kBayer8Ranks = makeBayerRanks<3>();

inline constexpr ThresholdMask kBayer2{2, kBayer2Ranks};
inline constexpr ThresholdMask kBayer4{4, kBayer4Ranks};
inline constexpr ThresholdMask kBayer8{8, kBayer8Ranks};

}  // namespace pantile::picture
