#pragma once

// What a JPEG file would store of pixels, by the transform's definition (ITU-T T.81, A.3.3).

#include <cmath>
#include <numbers>

#include "core/coefficient_planes.h"
#include "picture/cell_estimate.h"

namespace pantile::picture {

inline double basis(int frequency, int sample) {
    const double scale = frequency == 0 ? std::sqrt(0.125) : 0.5;
    return scale * std::cos((2 * sample + 1) * frequency * std::numbers::pi / 16);
}

// One channel by the transform's definition, samples as the mean of side x side pixels.
inline core::CoefficientPlane planeOf(const core::Pixels& pixels, std::size_t channel, int side,
                                      int step) {
    const auto sampleAt = [&](int x, int y) {
        double sum = 0;
        for (int i = 0; i < side * side; ++i)
            sum +=
                toYcc(pixels.at(x * side + i % side, y * side + i / side).rgb()).values.at(channel);
        return sum / (side * side) - (channel == 0 ? 128 : 0);
    };
    const int blocks = pixels.size.width / side / 8;
    core::CoefficientPlane plane{side, side, {blocks, blocks}, {}, {}};
    plane.steps.fill(static_cast<std::uint16_t>(step));
    for (int at = 0; at < blocks * blocks * 64; ++at) {
        const int left = at / 64 % blocks * 8;
        const int top = at / 64 / blocks * 8;
        double sum = 0;
        for (int i = 0; i < 64; ++i)
            sum += sampleAt(left + i % 8, top + i / 8) * basis(at % 8, i % 8) *
                   basis(at % 64 / 8, i / 8);
        plane.coefficients.push_back(static_cast<std::int16_t>(std::lround(sum / step)));
    }
    return plane;
}

/// All coefficients in steps of `step`; chroma halved both ways. Sides are multiples of 16.
inline core::CoefficientPlanes planesOf(const core::Pixels& pixels, int step) {
    return {
        pixels.size,
        {planeOf(pixels, 0, 1, step), planeOf(pixels, 1, 2, step), planeOf(pixels, 2, 2, step)}};
}

}  // namespace pantile::picture
