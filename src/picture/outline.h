#pragma once

#include "picture/cell_set.h"
#include "picture/neighbours.h"

namespace pantile::picture {

/// The cells at `background` that lie beside a cell at any other index: the line around whatever
/// stands on that background. It does not look over the grid's edges.
CellSet outlineOn(const core::Grid& grid, core::PaletteIndex background, Neighbours neighbours);

}  // namespace pantile::picture
