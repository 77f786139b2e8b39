#pragma once

#include "picture/path.h"

namespace pantile::picture {

/// The quadratic curve (a parabola) that leaves `from`, is at `through` half-way and arrives at
/// `to`; the places must pass checkPlace, and all three are cells of the path. It follows the
/// curve's exact points, rounded to the nearest cell (halves right and down); of two cells that
/// meet at a corner in a bend the one passed more briefly is left out, so that the path is nowhere
/// thicker than a line.
/// Source: Lagrange's interpolation through three points, docs/touch-up.md section 2.
Path curvePath(core::Point from, core::Point through, core::Point to);

}  // namespace pantile::picture
