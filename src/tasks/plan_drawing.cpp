#include "tasks/plan_drawing.h"

#include "board/load_writer.h"
#include "board/small_picture.h"
#include "catalogue/boards.h"
#include "catalogue/canvases.h"
#include "catalogue/reader.h"
#include "drawing/effort.h"
#include "drawing/plan_picture.h"
#include "drawing/planner.h"
#include "drawing/proven_bound.h"
#include "drawing/replay.h"
#include "tasks/drawing_estimate.h"

namespace pantile::tasks {

using core::Result;

namespace {

drawing::DrawingRequest requestFor(const FittedTexture& fitted, const core::Canvas& canvas,
                                   const core::Board& board) {
    return {fitted.grid, fitted.palette.transparent(), canvas, board.timing};
}

}  // namespace

Result<PlannedDrawing> planTexture(const core::Texture& texture, const core::Canvas& canvas,
                                   const core::Board& board, const core::Progress& progress,
                                   std::optional<std::int64_t> budgetMs) {
    PANTILE_ASSIGN_OR_RETURN(FittedTexture fitted, fitToCanvas(texture, canvas));
    const drawing::DrawingRequest request = requestFor(fitted, canvas, board);
    PANTILE_RETURN_IF_ERROR(drawing::checkRequest(request));
    const drawing::Effort effort =
        budgetMs ? drawing::effortFor(*budgetMs, request) : drawing::Effort{};
    PANTILE_ASSIGN_OR_RETURN(drawing::Plan plan, drawing::planDrawing(request, progress, effort));
    PANTILE_RETURN_IF_ERROR(drawing::provePlan(plan, request));
    std::optional<core::Grid> picture;
    if (board.hasDisplay()) picture = board::smallPicture(fitted.grid, board.display);
    PANTILE_ASSIGN_OR_RETURN(const std::int64_t bytes,
                             board::slotBytes({texture.text().title, fitted.grid, fitted.palette,
                                               canvas, plan, picture}));
    return PlannedDrawing{canvas, board, std::move(fitted), std::move(plan), std::move(picture),
                          bytes};
}

Result<std::vector<board::TextureVariant>> drawingVariants(const PlannedDrawing& planned,
                                                           const std::string& title) {
    const FittedTexture& fitted = planned.fitted;
    PANTILE_ASSIGN_OR_RETURN(std::vector<board::TextureVariant> variants,
                             board::variantsOf({title, fitted.grid, fitted.palette, planned.canvas,
                                                planned.plan, planned.picture},
                                               planned.board.timing));
    const drawing::DrawingRequest request = requestFor(fitted, planned.canvas, planned.board);
    for (const board::TextureVariant& variant : variants) {
        PANTILE_RETURN_IF_ERROR(drawing::provePlan(variant.plan, request));
    }
    return variants;
}

Result<PlannedDrawing> planFor(const catalogue::Library& library, const core::Texture& texture,
                               const PlanOptions& options, const core::Progress& progress) {
    PANTILE_ASSIGN_OR_RETURN(const DrawingDefaults defaults, drawingDefaults(library));
    PANTILE_ASSIGN_OR_RETURN(const core::Board board,
                             options.board.empty() ? Result<core::Board>(defaults.board)
                                                   : catalogue::readBoard(library, options.board));
    PANTILE_ASSIGN_OR_RETURN(const core::Canvas canvas,
                             options.canvas.empty()
                                 ? chooseCanvas(texture, defaults.canvases)
                                 : catalogue::readCanvas(library, options.canvas));
    return planTexture(texture, canvas, board, progress, options.budgetMs);
}

Result<ComparedDrawing> planStored(const catalogue::Library& library, core::TextureId id,
                                   const PlanOptions& options, const core::Progress& progress) {
    PANTILE_ASSIGN_OR_RETURN(const catalogue::TextureRecord record,
                             catalogue::readTexture(library, id));
    PANTILE_ASSIGN_OR_RETURN(PlannedDrawing planned,
                             planFor(library, record.texture, options, progress));
    const drawing::DrawingRequest request =
        requestFor(planned.fitted, planned.canvas, planned.board);
    ComparedDrawing compared{std::move(planned), record.row.title, 0,  0,
                             BoundKind::Cheap,   std::nullopt,     {}, {}};
    compared.byRowMs = drawing::planRowByRow(request).milliseconds;
    compared.boundMs = drawing::lowerBoundMs(request);
    PANTILE_ASSIGN_OR_RETURN(compared.faster,
                             fasterSettings(request, compared.planned.board.name,
                                            compared.planned.plan.milliseconds, progress));
    PANTILE_ASSIGN_OR_RETURN(compared.variants,
                             drawingVariants(compared.planned, record.row.title));
    if (options.prove) {
        PANTILE_ASSIGN_OR_RETURN(const drawing::ProvenBounds proven,
                                 drawing::provenBounds(request, progress));
        if (proven.everyPlan > compared.boundMs) compared.bound = BoundKind::Strong;
        if (proven.pickedOnce > compared.boundMs) compared.pickedOnceMs = proven.pickedOnce;
        compared.boundMs = proven.everyPlan;
    }
    return compared;
}

Result<void> writePlanPicture(const ComparedDrawing& compared, const std::filesystem::path& file,
                              IfExists ifExists) {
    const PlannedDrawing& planned = compared.planned;
    const std::string title = compared.title.empty() ? "a texture without title" : compared.title;
    const std::string text = drawing::planSvg(
        planned.plan, {title, planned.fitted.grid, planned.fitted.palette, planned.canvas});
    return writeFile(file, text, ifExists);
}

}  // namespace pantile::tasks
