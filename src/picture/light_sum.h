#pragma once

// Weighted sums of pixels in linear light, for scaling.

#include <algorithm>
#include <array>
#include <cstddef>

#include "core/pixels.h"
#include "picture/linear_picture.h"

namespace pantile::picture {

/// Colours are multiplied by alpha, so that what is invisible has no say.
/// Units: alpha 0..255: the scale falls out of every quotient but alpha's own.
struct LightSum {
    double r = 0;
    double g = 0;
    double b = 0;
    double alpha = 0;

    void add(const LightSum& other, double weight) {
        r += weight * other.r;
        g += weight * other.g;
        b += weight * other.b;
        alpha += weight * other.alpha;
    }

    /// `weight` is that of all pixels in the sum together.
    LinearPixel mean(double weight) const {
        if (!(alpha > 0)) return {};
        return {{r / alpha, g / alpha, b / alpha}, alpha / (255 * weight)};
    }
};

class LightTable {
public:
    LightTable() {
        for (std::size_t i = 0; i < m_light.size(); ++i)
            m_light[i] = core::srgb8ToLinear(static_cast<std::uint8_t>(i));
    }

    LightSum weighted(const core::Rgba8& pixel) const {
        const double alpha = pixel.a;
        return {alpha * m_light[pixel.r], alpha * m_light[pixel.g], alpha * m_light[pixel.b],
                alpha};
    }

private:
    std::array<double, 256> m_light{};
};

}  // namespace pantile::picture
