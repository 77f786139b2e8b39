#pragma once

#include <string>

#include "core/grid.h"
#include "core/palette.h"

namespace pantile::cli {

/// A texture as lines of half-block characters in 24-bit terminal colours, two rows of cells a
/// line; transparent cells let the terminal's own background through.
std::string terminalPicture(const core::Grid& grid, const core::Palette& palette);

}  // namespace pantile::cli
