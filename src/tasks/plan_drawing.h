#pragma once

// Draw: the plan of one texture on one canvas by one board, proven by replay, with its costs.

#include <cstdint>
#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "board/texture_variants.h"
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
#include "tasks/faster_settings.h"
#include "tasks/files.h"

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

enum class BoundKind {
    Cheap,   ///< From counts of cells and ways to the palette bar; of every plan.
    Strong,  ///< From where the cells lie; of every plan.
};

/// A plan beside what it is measured by. Units: milliseconds.
struct ComparedDrawing {
    PlannedDrawing planned;
    std::string title;
    std::int64_t byRowMs = 0;  ///< The plain row-by-row way by colour runs.
    std::int64_t boundMs = 0;  ///< No plan is quicker.
    BoundKind bound = BoundKind::Cheap;
    /// With the strong bound: what no plan is quicker than that picks each colour once.
    std::optional<std::int64_t> pickedOnceMs = {};
    std::vector<FasterSetting> faster;
    std::vector<board::TextureVariant> variants;  ///< The planned one, and others in fewer bytes.
};

struct PlanOptions {
    std::string canvas;                    ///< A name; empty for what chooseCanvas gives.
    std::string board;                     ///< A name; empty for the default board.
    std::optional<std::int64_t> budgetMs;  ///< About how long to plan; else the usual effort.
    bool prove = false;                    ///< The strong bounds instead of the cheap one.
};

/// Plans and replays, with the usual effort unless there is a budget. Errors: DoesNotFit;
/// Cancelled; Internal if the replay does not paint the texture, which would be a fault of ours.
core::Result<PlannedDrawing> planTexture(const core::Texture& texture, const core::Canvas& canvas,
                                         const core::Board& board,
                                         const core::Progress& progress = {},
                                         std::optional<std::int64_t> budgetMs = std::nullopt);

/// In which ways the drawing may lie in a load, each proved by replay: see board::variantsOf.
/// Errors: as board::variantsOf; Internal as planTexture.
core::Result<std::vector<board::TextureVariant>> drawingVariants(const PlannedDrawing& planned,
                                                                 const std::string& title);

/// The same for a texture of the library, on the canvas and by the board that the options name.
/// Errors: also NotFound.
core::Result<PlannedDrawing> planFor(const catalogue::Library& library,
                                     const core::Texture& texture, const PlanOptions& options,
                                     const core::Progress& progress = {});

/// The same with the comparison and what faster settings would save.
/// Errors: also NotFound.
core::Result<ComparedDrawing> planStored(const catalogue::Library& library, core::TextureId id,
                                         const PlanOptions& options,
                                         const core::Progress& progress = {});

/// Writes the picture of drawing::planSvg. Errors: as writeFile.
core::Result<void> writePlanPicture(const ComparedDrawing& compared,
                                    const std::filesystem::path& file, IfExists ifExists);

}  // namespace pantile::tasks
