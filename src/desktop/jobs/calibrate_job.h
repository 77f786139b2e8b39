#pragma once

// The calibration of a canvas off the window's thread: its load written, and what was read off
// taken.

#include <filesystem>
#include <string>

#include "core/canvas.h"
#include "core/progress.h"
#include "core/result.h"
#include "tasks/calibrate_canvas.h"

namespace pantile::desktop {

struct CalibrationRequest {
    std::filesystem::path libraryPath;
    core::Canvas canvas;  ///< As the window shows it.
    std::string board;
    std::filesystem::path folder;
    tasks::WriteOptions options;
};

/// Errors: as tasks::writeCalibration; Busy if the library has the canvas otherwise by now.
core::Result<tasks::WrittenLoad> writeCalibration(const CalibrationRequest& request,
                                                  const core::Progress& progress);

/// `canvas` is what the calibration was drawn for. Errors: as tasks::takeCalibration; Busy if the
/// library has the canvas otherwise by now.
core::Result<tasks::CalibratedCanvas> takeCalibration(const std::filesystem::path& libraryPath,
                                                      const core::Canvas& canvas,
                                                      const board::CalibrationReading& reading);

}  // namespace pantile::desktop
