#pragma once

// The order in which colours are drawn, and which tour each takes, so that the ways to and from the
// palette bar are short.

#include <cstdint>
#include <vector>

#include "drawing/timing.h"
#include "drawing/tours.h"

namespace pantile::drawing {

/// A colour and the tours to choose from.
struct ColourTours {
    core::PaletteIndex colour = 0;
    std::vector<Tour> tours;
};

/// Shape: `colour` and `tour` index the list given and the tours in it.
struct Leg {
    std::size_t colour = 0;
    std::size_t tour = 0;
};

/// Never slower than the list's own order with every colour's first tour.
/// Cost: quadratic in the colours for each improvement round, at most kMostRounds of them.
std::vector<Leg> orderColours(const std::vector<ColourTours>& colours, const TimeModel& model);

}  // namespace pantile::drawing
