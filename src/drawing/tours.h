#pragma once

// Tours: orders in which the straight runs of one colour can be drawn.

#include <cstdint>
#include <span>
#include <vector>

#include "drawing/straight_runs.h"
#include "drawing/timing.h"

namespace pantile::drawing {

/// One colour drawn from its swatch to the end of its last run.
struct Tour {
    Runs runs;
    std::int64_t milliseconds = 0;  ///< Without the pick and without the way to the next swatch.
};

enum class Lines : unsigned char { Rows, Columns };

/// Where a serpentine tour begins: at which line, counted from the top left, and which way along
/// it.
enum class Corner : unsigned char { FirstForwards, FirstBackwards, LastForwards, LastBackwards };

/// Line by line, every other line backwards.
/// Shape: `runs` stand line by line, as rowRuns or columnRuns makes them.
Runs serpentine(const Runs& runs, Lines lines, Corner corner);

/// Always on to the run with the nearest end, first from the place `startCounts`.
Runs nearestFirst(const Runs& runs, core::Size grid, core::Point startCounts,
                  const TimeModel& model);

/// The time of `runs` in that order from the swatch of `colour`.
std::int64_t tourMs(const Runs& runs, core::PaletteIndex colour, const TimeModel& model);

/// All tours worth trying for one colour; the first is the plain row-by-row one.
/// Shape: `rows` and `columns` are the longest runs of the colour.
std::vector<Tour> toursOf(core::PaletteIndex colour, const Runs& rows, const Runs& columns,
                          core::Size grid, const TimeModel& model);

}  // namespace pantile::drawing
