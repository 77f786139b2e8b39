#pragma once

// ColourNeighbourhood: which of many colours look at most so different from one.

#include "core/colour.h"
#include "core/colour_spaces.h"

namespace pantile::core {

/// The colours of which ciede2000 from the centre is at most `distance`. Most others are told by
/// their lightness and chroma alone, in a tenth of the time.
class ColourNeighbourhood {
public:
    ColourNeighbourhood(Rgb8 centre, double distance);

    bool holds(Rgb8 colour) const { return mayHold(colour) && isWithin(toLab(colour)); }

    /// Whether its luminance leaves it open: a few nanoseconds.
    bool mayHold(Rgb8 colour) const;

private:
    bool isWithin(const Lab& colour) const;

    Lab m_centre;
    double m_distance;
    double m_leastLuminance;
    double m_mostLuminance;
};

}  // namespace pantile::core
