#include "core/colour_neighbourhood.h"

#include <cmath>
#include <cstddef>
#include <cstdint>

#include "core/colour_difference.h"

namespace pantile::core {
namespace {

// Room for rounding: nothing is told by a bound that the formula itself would hold.
constexpr double kSlack = 1e-6;

// S_L of the formula is at most 1 + 0.015 * 2500 / sqrt(2520).
constexpr double kMostLightnessWeight = 1.7471;

// CIE 15: luminance of a lightness, rising throughout; white has 1.
double luminanceOf(double lightness) {
    constexpr double kDelta = 6.0 / 29.0;
    const double t = (lightness + 16) / 116;
    if (t > kDelta) return t * t * t;
    return 3 * kDelta * kDelta * (t - 4.0 / 29.0);
}

/// toLab within 1e-9, by the C library's own root, which need not be the same everywhere.
Lab quickLab(Rgb8 colour) {
    constexpr double kDelta = 6.0 / 29.0;
    const auto curve = [](double t) {
        if (t > kDelta * kDelta * kDelta) return std::cbrt(t);
        return t / (3 * kDelta * kDelta) + 4.0 / 29.0;
    };
    const Xyz xyz = toXyz(toLinear(colour));
    const double fx = curve(xyz.x / 0.95047);
    const double fy = curve(xyz.y);
    const double fz = curve(xyz.z / 1.08883);
    return {116 * fy - 16, 500 * (fx - fy), 200 * (fy - fz)};
}

/// The square of ciede2000 is at least this, which needs no angles.
double leastSquare(const Lab& p, const Lab& q) {
    const auto [a1, a2, c1, c2] = stretchedChromas(p, q);
    const double c = (c1 + c2) / 2;
    const double lOff = (p.l + q.l) * (p.l + q.l - 200) / 4 + 2500;
    const double partL = (q.l - p.l) / (1 + 0.015 * lOff / std::sqrt(20 + lOff));
    const double partC = (c2 - c1) / (1 + 0.045 * c);
    // T of the formula is at most 1.93, the sum of its weights.
    const double mostHueWeight = 1 + 0.015 * c * 1.93;
    const double squareH = 2 * (c1 * c2 - a1 * a2 - p.b * q.b) / (mostHueWeight * mostHueWeight);
    // With x and y for the parts of chroma and hue the formula has x^2 + y^2 + R_T x y, where R_T
    // is at most sin(60 degrees) * 2 * weight, and 2 x y at most x^2 + y^2, either sign.
    constexpr double kSin60 = 0.86602540378443865;
    return partL * partL + (1 - kSin60 * chromaWeight(c)) * (partC * partC + squareH);
}

}  // namespace

ColourNeighbourhood::ColourNeighbourhood(Rgb8 centre, double distance)
    : m_centre(toLab(centre)),
      m_distance(distance),
      m_leastLuminance(luminanceOf(m_centre.l - distance * kMostLightnessWeight) - kSlack),
      m_mostLuminance(luminanceOf(m_centre.l + distance * kMostLightnessWeight) + kSlack) {}

const ColourNeighbourhood::LuminanceShares& ColourNeighbourhood::luminanceShares() {
    static const LuminanceShares kShares = [] {
        LuminanceShares shares{};
        for (std::size_t i = 0; i < shares.red.size(); ++i) {
            const auto value = static_cast<std::uint8_t>(i);
            shares.red[i] = toXyz(toLinear(Rgb8{value, 0, 0})).y;
            shares.green[i] = toXyz(toLinear(Rgb8{0, value, 0})).y;
            shares.blue[i] = toXyz(toLinear(Rgb8{0, 0, value})).y;
        }
        return shares;
    }();
    return kShares;
}

bool ColourNeighbourhood::isWithin(Rgb8 colour) const {
    const Lab nearly = quickLab(colour);
    const double least = leastSquare(m_centre, nearly);
    if (least > m_distance * m_distance + kSlack) return false;
    return ciede2000(m_centre, toLab(colour)) <= m_distance;
}

}  // namespace pantile::core
