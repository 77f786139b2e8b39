#pragma once

// Calibrate: from a guessed canvas to one whose pitch and origin were measured, by a drawing.

#include <filesystem>
#include <string>

#include "board/calibration.h"
#include "catalogue/library.h"
#include "core/canvas.h"
#include "core/progress.h"
#include "core/result.h"
#include "tasks/write_load.h"

namespace pantile::tasks {

/// Writes and proves a load whose one slot is the calibration of a canvas. Nothing of it is kept in
/// the library. Errors: NotFound; as board::calibrationSlot and writeChoice.
core::Result<WrittenLoad> writeCalibration(const catalogue::Library& library,
                                           const std::string& canvas, const std::string& board,
                                           const std::filesystem::path& folder,
                                           const WriteOptions& options,
                                           const core::Progress& progress = {});

struct CalibratedCanvas {
    core::Canvas canvas;  ///< As it is stored now.
    board::Calibrated found;
};

/// Gives the canvas the pitch and the origin that explain what was read off, by setCanvas of
/// keep_estimates.h. The palette bar stays where the profile has it, unless that is its usual
/// place and the grid comes to lie under it: then it goes beside the grid.
/// Errors: NotFound; as board::calibratedFrom; InvalidInput if a bar placed elsewhere lies over it.
core::Result<CalibratedCanvas> takeCalibration(catalogue::Library& library,
                                               const std::string& canvas,
                                               const board::CalibrationReading& reading);

}  // namespace pantile::tasks
