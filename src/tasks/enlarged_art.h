#pragma once

// Small art that came enlarged, taken back to its cells unless the user refuses.

#include <optional>

#include "core/pixels.h"

namespace pantile::tasks {

enum class Enlarged {
    Undo,  ///< Art that is found to be enlarged is taken back to its cells.
    Keep,  ///< Pictures are taken as they are.
};

/// `limit` is the grid that pictures are made for: an indexed picture that fits it is a texture
/// as it stands, such as one that was exported from here, and is left alone.
/// Returns how many pixels a cell had along a row, if `picture` was taken back.
std::optional<double> undoEnlargement(core::Picture& picture, core::Size limit);

}  // namespace pantile::tasks
