#include "tasks/calibrate_canvas.h"

#include <utility>

#include "board/load_writer.h"
#include "catalogue/boards.h"
#include "catalogue/canvases.h"
#include "core/palette_bar.h"
#include "tasks/keep_estimates.h"

namespace pantile::tasks {

using core::Result;

Result<WrittenLoad> writeCalibration(const catalogue::Library& library,
                                     const std::string& canvasName, const std::string& boardName,
                                     const std::filesystem::path& folder,
                                     const WriteOptions& options, const core::Progress& progress) {
    PANTILE_ASSIGN_OR_RETURN(const core::Canvas canvas, catalogue::readCanvas(library, canvasName));
    Choice choice;
    PANTILE_ASSIGN_OR_RETURN(choice.board, catalogue::readBoard(library, boardName));
    PANTILE_ASSIGN_OR_RETURN(board::LoadSlot slot,
                             board::calibrationSlot(canvas, choice.board.timing));
    PANTILE_ASSIGN_OR_RETURN(const std::int64_t bytes, board::slotBytes(slot));
    choice.bytes = board::loadBaseBytes() + bytes;
    choice.milliseconds = slot.plan.milliseconds;
    choice.slots.push_back({{}, bytes, choice.milliseconds, std::move(slot)});
    return writeChoice("calibration", std::move(choice), folder, options, progress);
}

Result<CalibratedCanvas> takeCalibration(catalogue::Library& library, const std::string& name,
                                         const board::CalibrationReading& reading) {
    PANTILE_ASSIGN_OR_RETURN(core::Canvas canvas, catalogue::readCanvas(library, name));
    PANTILE_ASSIGN_OR_RETURN(const board::Calibrated found, board::calibratedFrom(canvas, reading));
    const core::CanvasGeometry before = canvas.geometry;
    canvas.geometry.cellPitch = found.cellPitch;
    canvas.geometry.gridCentre = found.gridCentre;
    core::keepUsualBarClear(canvas, before, canvas.size);
    PANTILE_RETURN_IF_ERROR(core::checkBar(canvas));
    PANTILE_RETURN_IF_ERROR(tasks::setCanvas(library, canvas));
    return CalibratedCanvas{std::move(canvas), found};
}

}  // namespace pantile::tasks
