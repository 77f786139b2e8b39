#pragma once

// What a JPEG file says of its picture before decoding has rounded and smoothed it. Source: ITU-T
// T.81, annex A.

#include <array>
#include <cstdint>
#include <vector>

#include "core/geometry.h"

namespace pantile::core {

inline constexpr int kBlockSide = 8;
inline constexpr std::size_t kBlockCoefficients = 64;

/// One channel. A sample is the mean of pixelsAcross x pixelsDown pixels.
struct CoefficientPlane {
    int pixelsAcross = 1;
    int pixelsDown = 1;
    Size blocks;
    /// What a coefficient of 1 stands for, row by row (not in the file's zigzag).
    std::array<std::uint16_t, kBlockCoefficients> steps{};
    /// Shape: kBlockCoefficients for each block, blocks and coefficients row by row.
    std::vector<std::int16_t> coefficients;
};

/// Y', Cb and Cr of a picture of `size` pixels; levels are 0..255, less 128.
struct CoefficientPlanes {
    Size size;
    std::array<CoefficientPlane, 3> channels;
};

}  // namespace pantile::core
