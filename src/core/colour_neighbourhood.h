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
            m_shares->red[colour.r].y + m_shares->green[colour.g].y + m_shares->blue[colour.b].y;
        return luminance >= m_leastLuminance && luminance <= m_mostLuminance && isWithin(colour);
    }

private:
    /// What each value of a channel gives to the colour.
    struct ChannelShares {
        std::array<Xyz, 256> red;
        std::array<Xyz, 256> green;
        std::array<Xyz, 256> blue;
    };

    static const ChannelShares& channelShares();

    bool isWithin(Rgb8 colour) const;

    const ChannelShares* m_shares = &channelShares();
    Lab m_centre;
    double m_distance;
    double m_leastLuminance;
    double m_mostLuminance;
};

}  // namespace pantile::core
