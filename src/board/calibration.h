#pragma once

// Calibration: a texture of marks and rulers that a board draws on a canvas whose pitch and origin
// are only guessed, and the pitch and origin that follow from where the marks came to lie.
// Authority: docs/player.md section 5.

#include <optional>
#include <vector>

#include "board/load.h"
#include "core/canvas.h"
#include "core/result.h"
#include "core/timing.h"

namespace pantile::board {

/// The marks and rulers for `canvas`, drawn with a pitch one count less than the canvas has (and at
/// least 1), so that ticks shift against the toolkit's cells by one count a cell, as on a vernier.
/// All is drawn in dots of colour 0. Shape: four marks at the corners of a part of the canvas; a
/// row of ticks below the upper ones and a column beside the left ones, with a cell between two
/// ticks. Errors: InvalidInput if the canvas is smaller than 16 cells on a side or its geometry is
/// wrong.
core::Result<LoadSlot> calibrationSlot(const core::Canvas& canvas,
                                       const core::PointerTiming& timing);

/// What a person reads off the toolkit's grid: its own cells, counted from 0.
struct CalibrationReading {
    core::Point near;  ///< Where the mark at the top left is.
    core::Point far;   ///< Where the mark at the bottom right is.
    /// The first two ticks of the row, from the left, that touch: the column of the right one.
    std::optional<int> pairColumn;
    /// The same of the column, from the top: the row of the lower one.
    std::optional<int> pairRow;
};

struct Calibrated {
    int cellPitch = 0;
    core::Point gridCentre;
    int leastPitch = 0;  ///< Pitches that the reading allows; cellPitch lies between.
    int mostPitch = 0;
    core::Point unsure;  ///< Counts that the origin may lie further left or right, up or down.
};

/// The pitch and the origin that explain the reading of a calibration drawn for `canvas`: of all
/// that do, those in the middle. Units: counts. Cost: some ten thousand tries of small sums.
/// Errors: InvalidInput if no pitch and origin do, which also tells of motion that was dropped.
core::Result<Calibrated> calibratedFrom(const core::Canvas& canvas,
                                        const CalibrationReading& reading);

/// Whether drawing it once more would tell nothing: one pitch alone explains the reading, and ticks
/// touched in row and column.
bool isSettled(const Calibrated& found, const CalibrationReading& reading);

/// What the calibration of a canvas looks like on a toolkit's grid.
struct CalibrationSight {
    std::vector<core::Point> cells;  ///< That are painted, of those that the canvas has.
    CalibrationReading reading;      ///< What a person would read off.
    int tickRow = 0;                 ///< Where the row of ticks is.
    int tickColumn = 0;              ///< Where the column of ticks is.
};

/// The calibration that is drawn for `canvas`, if the toolkit's cells really were `cellPitch`
/// counts wide, the centre of the first at `gridCentre`. Errors: as calibrationSlot; InvalidInput
/// if the pitch is none.
core::Result<CalibrationSight> calibrationOn(const core::Canvas& canvas, int cellPitch,
                                             core::Point gridCentre);

}  // namespace pantile::board
