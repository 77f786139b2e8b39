#pragma once

// Undo and redo of whole actions, as catalogue/actions.h has them, and what textures cost brought
// in line.

#include "catalogue/actions.h"
#include "catalogue/library.h"
#include "core/result.h"

namespace pantile::tasks {

/// As the functions of catalogue/actions.h. Costs that no longer hold are dropped; refreshEstimates
/// works out the new ones.
core::Result<catalogue::UndoneAction> undoLast(catalogue::Library& library);
core::Result<catalogue::UndoneAction> redoLast(catalogue::Library& library);

}  // namespace pantile::tasks
