#pragma once

// Strokes from the order of a layer's nodes.

#include <cstdint>
#include <vector>

#include "drawing/links.h"
#include "drawing/pen_ways.h"
#include "drawing/stroke.h"

namespace pantile::drawing {

/// The strokes that visit the nodes in `order`: down where the links say so, by a shortest way
/// through passable cells, else lifted.
std::vector<Stroke> strokesAlong(const std::vector<Node>& order, const Links& links,
                                 core::PaletteIndex colour,
                                 const std::vector<std::uint8_t>& passable, const PenWays& ways);

}  // namespace pantile::drawing
