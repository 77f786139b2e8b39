#include "core/colour_neighbourhood.h"

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

}  // namespace

ColourNeighbourhood::ColourNeighbourhood(Rgb8 centre, double distance)
    : m_centre(toLab(centre)),
      m_distance(distance),
      m_leastLuminance(luminanceOf(m_centre.l - distance * kMostLightnessWeight) - kSlack),
      m_mostLuminance(luminanceOf(m_centre.l + distance * kMostLightnessWeight) + kSlack) {}

bool ColourNeighbourhood::mayHold(Rgb8 colour) const {
    const double luminance = toXyz(toLinear(colour)).y;
    return luminance >= m_leastLuminance && luminance <= m_mostLuminance;
}

bool ColourNeighbourhood::isWithin(const Lab& colour) const {
    const StretchedChromas chromas = stretchedChromas(m_centre, colour);
    const double partL = (colour.l - m_centre.l) / kMostLightnessWeight;
    const double partC = (chromas.c2 - chromas.c1) / (1 + 0.045 * (chromas.c1 + chromas.c2) / 2);
    // With x and y for the parts of chroma and hue the formula has x^2 + y^2 + R_T x y, and R_T is
    // at most sqrt(3), either sign: that is never less than x^2 / 4.
    const double least = partL * partL + partC * partC / 4;
    if (least > m_distance * m_distance + kSlack) return false;
    return ciede2000(m_centre, colour) <= m_distance;
}

}  // namespace pantile::core
