#pragma once

// Jumps: runs of one colour joined to strokes of a pen that paints only where reports land.
// Authority: docs/drawing.md section 5.2.

#include <vector>

#include "drawing/straight_runs.h"
#include "drawing/stroke.h"
#include "drawing/timing.h"

namespace pantile::drawing {

/// The stroke of one run.
Stroke strokeOf(const StraightRun& run, core::PaletteIndex colour);

/// Appends the strokes that draw `runs` in their order: a run goes on with the stroke before it if
/// the pen can jump there, at once or by way of cells of the same colour, sooner than by a lift.
/// Shape: with a pen that cannot jump, each run is a stroke.
void appendJoined(std::vector<Stroke>& strokes, const Runs& runs, core::PaletteIndex colour,
                  const TimeModel& model);

}  // namespace pantile::drawing
