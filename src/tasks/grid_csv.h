#pragma once

// Grids as comma-separated text: one row of palette indices a line. Lines that begin with '#' may
// say more: "# palette #1b2631 #f2efe4 …", "# transparent 0", "# title wet sand".

#include <optional>
#include <string>
#include <string_view>

#include "core/grid.h"
#include "core/palette.h"
#include "core/result.h"
#include "core/texture.h"

namespace pantile::tasks {

struct GridCsv {
    core::Grid grid;
    std::optional<core::Palette> palette;
    std::string title;
};

/// Errors: InvalidInput naming row and column for letters, empty entries, numbers outside 0..255
/// and rows of unequal length; TooLarge beyond 256 rows or columns.
core::Result<GridCsv> parseGridCsv(std::string_view text);

/// The text that parseGridCsv reads back to an equal grid, palette and title.
std::string writeGridCsv(const core::Texture& texture);

/// Whether the first line that is no remark begins with a number: a grid rather than other text.
bool looksLikeGridCsv(std::string_view text);

}  // namespace pantile::tasks
