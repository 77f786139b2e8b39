#pragma once

// The order of colours in which those drawn first may pass most usefully under those drawn later.

#include <vector>

#include "drawing/least_tree.h"

namespace pantile::drawing {

/// All painted colours, background first where that pays.
/// Cost: trees for each pair of colours, then for each trial move; stops when `mostWork` cells were
/// visited.
std::vector<core::PaletteIndex> coveringOrder(LeastTree& trees, std::int64_t mostWork);

/// Moves a colour, or a part of one, to the best place by the trees; what is gained.
std::int64_t shiftToBest(LeastTree& trees, std::vector<core::PaletteIndex>& order,
                         core::PaletteIndex colour);

/// What `order` costs by its trees.
std::int64_t treesMs(LeastTree& trees, const std::vector<core::PaletteIndex>& order);

}  // namespace pantile::drawing
