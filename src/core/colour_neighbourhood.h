#pragma once

// ColourNeighbourhood: which of many colours look at most so different from one.

#include <array>

#include "core/colour.h"
#include "core/colour_spaces.h"

namespace pantile::core {

/// The colours of which ciede2000 from the centre is at most `distance`. Most others are told by
/// their lightness and chroma alone, in a tenth of the time.
class ColourNeighbourhood {
public:
    ColourNeighbourhood(Rgb8 centre, double distance);

    bool holds(Rgb8 colour) const {
        const double luminance =
            m_shares->red[colour.r] + m_shares->green[colour.g] + m_shares->blue[colour.b];
        return luminance >= m_leastLuminance && luminance <= m_mostLuminance && isWithin(colour);
    }

private:
    /// What each value of a channel gives to the luminance.
    struct LuminanceShares {
        std::array<double, 256> red;
        std::array<double, 256> green;
        std::array<double, 256> blue;
    };

    static const LuminanceShares& luminanceShares();

    bool isWithin(Rgb8 colour) const;

    const LuminanceShares* m_shares = &luminanceShares();
    Lab m_centre;
    double m_distance;
    double m_leastLuminance;
    double m_mostLuminance;
};

}  // namespace pantile::core
