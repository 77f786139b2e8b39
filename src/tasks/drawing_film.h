#pragma once

// A drawing as it would come about on the toolkit's screen, beside the plain row-by-row way.

#include <string>

#include "catalogue/library.h"
#include "core/ids.h"
#include "core/progress.h"
#include "core/result.h"
#include "drawing/film.h"
#include "tasks/plan_drawing.h"

namespace pantile::tasks {

struct FilmedDrawing {
    std::string title;
    PlannedDrawing planned;
    drawing::Film film;   ///< Of the plan: what the board would do, report by report.
    drawing::Film byRow;  ///< The same texture row by row, by colour runs.
};

/// Errors: as planStored.
core::Result<FilmedDrawing> filmStored(const catalogue::Library& library, core::TextureId id,
                                       const PlanOptions& options,
                                       const core::Progress& progress = {});

}  // namespace pantile::tasks
