#pragma once

// Where the cells of enlarged art lie, from what a JPEG file stores: for art of so few lines that
// steps between pixels prove nothing. See docs/conversion.md section 11.

#include <optional>

#include "core/pixels.h"
#include "picture/cell_lines.h"

namespace pantile::picture {

/// The largest whole pitch of five pixels or more that divides both sides into 16 cells or more
/// and in which flat cells would be stored as the file has them; nothing if there is none, if too
/// little is stored to tell, or beyond the bounds of coefficient_fit.h.
std::optional<CellLines> findStoredLines(const core::Picture& picture);

/// Whether `lines` are those between the file's own blocks, which steps show in smooth pictures of
/// low quality: cells of whole blocks would leave all blocks flat.
bool areOwnBlocks(const core::CoefficientPlanes& planes, const CellLines& lines);

}  // namespace pantile::picture
