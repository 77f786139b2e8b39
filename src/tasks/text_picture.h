#pragma once

#include <string>

#include "core/grid.h"
#include "core/palette.h"

namespace pantile::tasks {

/// A grid as lines of characters: 0-9, a-z, A-Z for palette indices 0..61, two hexadecimal digits
/// and a blank for each cell where there are more, '.' (or "..") for what is left unpainted.
std::string textPicture(const core::Grid& grid, const core::Palette& palette);

}  // namespace pantile::tasks
