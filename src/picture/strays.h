#pragma once

// Small components that take the colour of what lies around them: fewer strokes to draw. See
// docs/seams-and-colours.md sections 6 and 7.

#include "core/palette.h"
#include "core/result.h"
#include "picture/connected_cells.h"

namespace pantile::picture {

inline constexpr int kMaxStraySize = core::kMaxGridSide * core::kMaxGridSide;
inline constexpr int kMaxSimplifyLevel = 1000;

struct StrayOptions {
    int largest = 1;  ///< In cells: components of so many or fewer are strays.
    Neighbours neighbours = Neighbours::Four;
};

/// Gives every stray the colour that most of the cells beside it have, of equals the lower index,
/// until there is no stray left but a grid of a single component. Unpainted cells are a colour like
/// any other. Never makes more components than there were.
/// Errors: InvalidInput if `largest` is outside 1..kMaxStraySize.
core::Result<core::Grid> removeStrays(const core::Grid& grid, const StrayOptions& options = {});

/// Gives a component (over sides) the least different of the colours beside it, if its number of
/// cells times that difference is below `level`; until there is no such component left. So a single
/// cell must differ little or a few cells hardly at all. Which cells are unpainted never changes,
/// nor are there ever more components than there were; level 0 changes nothing.
/// Units: the difference in hundredths of OKLab: black and white are 100 apart, 2 is just visible.
/// Errors: InvalidInput if the level is outside 0..kMaxSimplifyLevel or an index outside the
/// palette.
core::Result<core::Grid> simplify(const core::Grid& grid, const core::Palette& palette, int level);

}  // namespace pantile::picture
