#pragma once

// The tour that local search begins with: shortest links first.

#include <functional>
#include <vector>

#include "drawing/links.h"

namespace pantile::drawing {

/// A path through all nodes of `links`, the forced links in it: links are taken from the shortest
/// on as long as they join ends of different pieces, then the pieces are joined, always on to the
/// nearest end, first the one for which `first` is least.
/// Cost: links x log links, and the square of the pieces left.
std::vector<Node> greedyPath(const Links& links, const std::function<std::int64_t(Node)>& first);

}  // namespace pantile::drawing
