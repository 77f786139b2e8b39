#include "tasks/drawing_film.h"

#include <utility>

#include "catalogue/reader.h"
#include "drawing/planner.h"
#include "drawing/reports.h"

namespace pantile::tasks {

using core::Result;

namespace {

Result<drawing::Film> filmPlan(const drawing::Plan& plan, const PlannedDrawing& planned) {
    const core::PointerTiming& timing = planned.board.timing;
    return drawing::filmReplay(drawing::reportsOf(plan, planned.canvas, timing), planned.canvas,
                               timing);
}

}  // namespace

Result<FilmedDrawing> filmStored(const catalogue::Library& library, core::TextureId id,
                                 const PlanOptions& options, const core::Progress& progress) {
    PANTILE_ASSIGN_OR_RETURN(const catalogue::TextureRecord record,
                             catalogue::readTexture(library, id));
    PANTILE_ASSIGN_OR_RETURN(PlannedDrawing planned,
                             planFor(library, record.texture, options, progress));
    const drawing::Plan byRowPlan =
        drawing::planRowByRow({planned.fitted.grid, planned.fitted.palette.transparent(),
                               planned.canvas, planned.board.timing});
    PANTILE_ASSIGN_OR_RETURN(drawing::Film film, filmPlan(planned.plan, planned));
    if (progress.stopRequested()) return core::stoppedError();
    PANTILE_ASSIGN_OR_RETURN(drawing::Film byRow, filmPlan(byRowPlan, planned));
    return FilmedDrawing{record.row.title, std::move(planned), std::move(film), std::move(byRow)};
}

}  // namespace pantile::tasks
