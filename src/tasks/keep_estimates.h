#pragma once

// The costs that a library keeps for its textures, and the profiles that they hang on: canvases and
// boards are changed here, so that no cost outlives the settings it holds for.

#include <cstdint>
#include <optional>
#include <string_view>

#include "catalogue/library.h"
#include "catalogue/texture_row.h"
#include "core/board.h"
#include "core/canvas.h"
#include "core/progress.h"
#include "core/result.h"

namespace pantile::tasks {

/// As the functions of catalogue/canvases.h and boards.h; in the same change, costs that no longer
/// hold are dropped. Cost: reads every texture with a cost if a canvas or the default board
/// changed.
core::Result<void> addCanvas(catalogue::Library& library, const core::Canvas& canvas);
core::Result<void> setCanvas(catalogue::Library& library, const core::Canvas& canvas);
core::Result<void> renameCanvas(catalogue::Library& library, std::string_view name,
                                std::string_view newName);
core::Result<void> removeCanvas(catalogue::Library& library, std::string_view name);
core::Result<void> addBoard(catalogue::Library& library, const core::Board& board);
core::Result<void> setBoard(catalogue::Library& library, const core::Board& board);
core::Result<void> renameBoard(catalogue::Library& library, std::string_view name,
                               std::string_view newName);
core::Result<void> removeBoard(catalogue::Library& library, std::string_view name);

/// Makes the canvas or the board of that name into `canvas` or `board`, another name included, as
/// one action. Errors: as renaming and setting it.
core::Result<void> changeCanvas(catalogue::Library& library, std::string_view name,
                                const core::Canvas& canvas);
core::Result<void> changeBoard(catalogue::Library& library, std::string_view name,
                               const core::Board& board);

/// Plans the textures that have no cost, on all cores, and keeps each one's as soon as it is known;
/// those that fit no canvas stay without. Returns how many have one now that had none.
/// Errors: Cancelled, with what was kept before staying.
core::Result<std::int64_t> refreshEstimates(catalogue::Library& library,
                                            const core::Progress& progress = {});

/// Drops what does not hold for the canvases and boards as they are now. Cost: reads every texture
/// with a cost.
core::Result<void> dropStaleEstimates(catalogue::Library& library);

/// The texture's cost: what is kept, or worked out now, and then kept if the library can be
/// written. Nothing if it fits no canvas.
std::optional<catalogue::Estimate> knownEstimate(catalogue::Library& library,
                                                 const catalogue::TextureRecord& record);

}  // namespace pantile::tasks
