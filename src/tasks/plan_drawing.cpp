#include "tasks/plan_drawing.h"

#include "board/load_writer.h"
#include "board/small_picture.h"
#include "catalogue/boards.h"
#include "catalogue/canvases.h"
#include "catalogue/reader.h"
#include "drawing/planner.h"
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
                                   const core::Board& board, const core::Progress& progress) {
    PANTILE_ASSIGN_OR_RETURN(FittedTexture fitted, fitToCanvas(texture, canvas));
    const drawing::DrawingRequest request = requestFor(fitted, canvas, board);
    PANTILE_ASSIGN_OR_RETURN(drawing::Plan plan, drawing::planDrawing(request, progress));
    PANTILE_RETURN_IF_ERROR(drawing::provePlan(plan, request));
    std::optional<core::Grid> picture;
    if (board.hasDisplay()) picture = board::smallPicture(fitted.grid, board.display);
    PANTILE_ASSIGN_OR_RETURN(const std::int64_t bytes,
                             board::slotBytes({texture.text().title, fitted.grid, fitted.palette,
                                               canvas, plan, picture}));
    return PlannedDrawing{canvas, board, std::move(fitted), std::move(plan), std::move(picture),
                          bytes};
}

Result<ComparedDrawing> planStored(const catalogue::Library& library, core::TextureId id,
                                   const std::string& canvasName, const std::string& boardName,
                                   const core::Progress& progress) {
    PANTILE_ASSIGN_OR_RETURN(const catalogue::TextureRecord record,
                             catalogue::readTexture(library, id));
    PANTILE_ASSIGN_OR_RETURN(const DrawingDefaults defaults, drawingDefaults(library));
    PANTILE_ASSIGN_OR_RETURN(const core::Board board,
                             boardName.empty() ? Result<core::Board>(defaults.board)
                                               : catalogue::readBoard(library, boardName));
    PANTILE_ASSIGN_OR_RETURN(const core::Canvas canvas,
                             canvasName.empty() ? chooseCanvas(record.texture, defaults.canvases)
                                                : catalogue::readCanvas(library, canvasName));
    PANTILE_ASSIGN_OR_RETURN(PlannedDrawing planned,
                             planTexture(record.texture, canvas, board, progress));
    const drawing::DrawingRequest request = requestFor(planned.fitted, canvas, board);
    return ComparedDrawing{std::move(planned), drawing::planRowByRow(request).milliseconds,
                           drawing::lowerBoundMs(request)};
}

}  // namespace pantile::tasks
