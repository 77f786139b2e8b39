#include "core/colour_neighbourhood.h"

#include <algorithm>
#include <array>
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

/// The curve of CIE 15 from 0 to 1 by a table, within 3e-7: between two entries the cube root is
/// that close to a line wherever the curve is not one itself.
class LabCurve {
public:
    static const LabCurve& instance() {
        static const LabCurve kCurve;
        return kCurve;
    }

    double operator()(double t) const {
        const double place = std::clamp(t, 0.0, 1.0) * kSteps;
        const auto below = std::min(static_cast<std::size_t>(place), kSteps - 1);
        const double share = place - static_cast<double>(below);
        return m_values[below] + share * (m_values[below + 1] - m_values[below]);
    }

private:
    static constexpr std::size_t kSteps = 1U << 14U;

    LabCurve() {
        constexpr double kDelta = 6.0 / 29.0;
        for (std::size_t i = 0; i <= kSteps; ++i) {
            const double t = static_cast<double>(i) / kSteps;
            m_values[i] = t > kDelta * kDelta * kDelta ? std::cbrt(t)
                                                       : t / (3 * kDelta * kDelta) + 4.0 / 29.0;
        }
    }

    std::array<double, kSteps + 1> m_values{};
};

/// toLab within 0.001, need not be the same everywhere.
Lab quickLab(const Xyz& colour) {
    const LabCurve& curve = LabCurve::instance();
    const double fx = curve(colour.x / 0.95047);
    const double fy = curve(colour.y);
    const double fz = curve(colour.z / 1.08883);
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

const ColourNeighbourhood::ChannelShares& ColourNeighbourhood::channelShares() {
    static const ChannelShares kShares = [] {
        ChannelShares shares{};
        for (std::size_t i = 0; i < shares.red.size(); ++i) {
            const auto value = static_cast<std::uint8_t>(i);
            shares.red[i] = toXyz(toLinear(Rgb8{value, 0, 0}));
            shares.green[i] = toXyz(toLinear(Rgb8{0, value, 0}));
            shares.blue[i] = toXyz(toLinear(Rgb8{0, 0, value}));
        }
        return shares;
    }();
    return kShares;
}

bool ColourNeighbourhood::isWithin(Rgb8 colour) const {
    // More than an error of 0.001 in each coordinate moves the bound.
    constexpr double kMoved = 0.01;
    const Xyz& red = m_shares->red[colour.r];
    const Xyz& green = m_shares->green[colour.g];
    const Xyz& blue = m_shares->blue[colour.b];
    const Lab nearly =
        quickLab({red.x + green.x + blue.x, red.y + green.y + blue.y, red.z + green.z + blue.z});
    const double most = m_distance + kMoved;
    if (leastSquare(m_centre, nearly) > most * most) return false;
    return ciede2000(m_centre, toLab(colour)) <= m_distance;
}

}  // namespace pantile::core
