#pragma once

// The boards and canvases that Pantile comes with. All may be edited in a library.

#include <vector>

#include "core/board.h"
#include "core/canvas.h"

namespace pantile::board {

/// Each description says where its figures come from.
std::vector<core::Board> shippedBoards();

/// Square canvases with sixteen free colours, the palette bar to the right of the grid.
std::vector<core::Canvas> shippedCanvases();

}  // namespace pantile::board
