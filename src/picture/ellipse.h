#pragma once

// Ellipses and circles that fill a box of any width and height, odd or even. See docs/touch-up.md
// section 2.

#include "picture/cell_set.h"
#include "picture/path.h"
#include "picture/rectangle.h"

namespace pantile::picture {

/// The cells of the ellipse through the centres of the outermost cells of `box`, each once, in no
/// order that means anything; the box's corners must pass checkPlace. By the midpoint method: in
/// every column and in every row of a quarter the cell is taken that the decision at the middle
/// between two cells names. A box of one row or column gives a line; a square one a circle.
/// Source: J. R. Van Aken, 'An efficient ellipse-drawing algorithm', IEEE Computer Graphics and
/// Applications 4(9), 1984; docs/touch-up.md section 2 says how columns and rows are joined.
std::vector<core::Point> ellipseOutline(const CellBox& box);

/// The outline and everything inside it.
CellSet filledEllipse(core::Size grid, const CellBox& box);

}  // namespace pantile::picture
