#include "desktop/jobs/calibrate_job.h"

#include "catalogue/canvases.h"
#include "tasks/library_place.h"

namespace pantile::desktop {

using core::Result;

namespace {

// A reading says nothing of another canvas than the calibration was drawn for.
Result<void> checkSame(const catalogue::Library& library, const core::Canvas& canvas) {
    PANTILE_ASSIGN_OR_RETURN(const core::Canvas stored,
                             catalogue::readCanvas(library, canvas.name));
    if (stored == canvas) return {};
    return core::Error{core::ErrorKind::Busy,
                       "the canvas " + canvas.name + " has been changed meanwhile",
                       "write its calibration again, and draw it"};
}

}  // namespace

Result<tasks::WrittenLoad> writeCalibration(const CalibrationRequest& request,
                                            const core::Progress& progress) {
    PANTILE_ASSIGN_OR_RETURN(const catalogue::Library library,
                             tasks::openLibrary(request.libraryPath, tasks::Purpose::Look));
    PANTILE_RETURN_IF_ERROR(checkSame(library, request.canvas));
    return tasks::writeCalibration(library, request.canvas.name, request.board, request.folder,
                                   request.options, progress);
}

Result<tasks::CalibratedCanvas> takeCalibration(const std::filesystem::path& libraryPath,
                                                const core::Canvas& canvas,
                                                const board::CalibrationReading& reading) {
    PANTILE_ASSIGN_OR_RETURN(catalogue::Library library,
                             tasks::openLibrary(libraryPath, tasks::Purpose::Change));
    PANTILE_RETURN_IF_ERROR(checkSame(library, canvas));
    return tasks::takeCalibration(library, canvas.name, reading);
}

}  // namespace pantile::desktop
