#pragma once

// Draw: the plan of one texture on one canvas by one board, proven by replay, with its costs.

#include <optional>
#include <string>

#include "catalogue/library.h"
#include "core/board.h"
#include "core/canvas.h"
#include "core/ids.h"
#include "core/progress.h"
#include "core/result.h"
#include "core/texture.h"
#include "drawing/request.h"
#include "drawing/stroke.h"
#include "tasks/drawing_choice.h"

namespace pantile::tasks {

/// Units: milliseconds and bytes.
struct PlannedDrawing {
    core::Canvas canvas;
    core::Board board;
    FittedTexture fitted;
    drawing::Plan plan;
    std::optional<core::Grid> picture;  ///< For the board's display, if it has one.
    std::int64_t bytes = 0;             ///< Of a load, for its slot.
};

/// A plan beside what it is measured by. Units: milliseconds.
struct ComparedDrawing {
    PlannedDrawing planned;
    std::int64_t byRowMs = 0;  ///< The plain row-by-row way by colour runs.
    std::int64_t boundMs = 0;  ///< No plan is quicker.
};

/// Plans and replays. Errors: DoesNotFit; Cancelled; Internal if the replay does not paint the
/// texture, which would be a fault of ours.
core::Result<PlannedDrawing> planTexture(const core::Texture& texture, const core::Canvas& canvas,
                                         const core::Board& board,
                                         const core::Progress& progress = {});

/// The same for a texture of the library, with the comparison. `canvas` and `board` are names, or
/// empty for the canvas that chooseCanvas gives and the default board. Errors: also NotFound.
core::Result<ComparedDrawing> planStored(const catalogue::Library& library, core::TextureId id,
                                         const std::string& canvas, const std::string& board,
                                         const core::Progress& progress = {});

}  // namespace pantile::tasks
