#pragma once

// TimeModel: what each part of a drawing costs, in whole milliseconds, on one canvas with one
// timing. Authority: docs/drawing.md section 2.

#include <cstdint>
#include <optional>
#include <vector>

#include "core/canvas.h"
#include "core/timing.h"
#include "drawing/stroke.h"

namespace pantile::drawing {

/// Units: milliseconds; places are pointer counts on the toolkit's screen where the name says
/// counts, and cells of the grid where it says cell.
class TimeModel {
public:
    TimeModel(const core::Canvas& canvas, const core::PointerTiming& timing);

    /// The same model for a drawing that goes on from another place.
    TimeModel startingAt(core::Point counts) const;

    /// The pen's place in counts before the first report: the centre of cell (0, 0).
    core::Point start() const { return m_start; }

    core::Point cellCentre(core::Point cell) const { return m_geometry.cellCentre(cell); }

    core::Point swatch(core::PaletteIndex colour) const { return m_geometry.swatch(colour); }

    /// Largest move on an axis, in counts, that one report may make with the pen down: at most a
    /// cell, but for the Lines pen.
    int stepDown() const { return m_stepDown; }

    /// How many cells a jump with the pen down may be long, on the longer side; 0 if it cannot
    /// jump.
    int jumpCells() const { return m_jumpCells; }

    /// The largest move of a jump, in counts.
    int jumpStep() const { return m_timing.maxStepDown; }

    int stepUp() const { return m_timing.maxStepUp; }

    int cellPitch() const { return m_geometry.cellPitch; }

    const core::PointerTiming& timing() const { return m_timing; }

    /// Press, and hold still; release, and hold still.
    std::int64_t clickMs() const { return std::int64_t{m_timing.pressMs} + m_timing.releaseMs; }

    /// Moves the raised pen from one place in counts to another; 0 if they are the same.
    std::int64_t travelMs(core::Point fromCounts, core::Point toCounts) const;

    /// Moves the lowered pen between two cells of one row or column (with the Diagonals pen also of
    /// one diagonal), painting every cell on the way.
    std::int64_t dragMs(core::Point fromCell, core::Point toCell) const;

    /// Travel to a swatch, click it, and wait until the toolkit has settled.
    std::int64_t pickMs(core::Point fromCounts, core::PaletteIndex colour) const;

    /// From the end of a straight run of cells to the begin of the next: a jump if that is
    /// possible, else lift, travel, press.
    std::int64_t linkMs(core::Point fromCell, core::Point toCell) const;

    /// Whether linkMs is a jump.
    bool canJump(core::Point fromCell, core::Point toCell) const;

    /// Picks the colour, goes to the fill button, clicks it, and waits until the toolkit has
    /// settled. Shape: the canvas has a fill button.
    std::int64_t fillMs(core::Point fromCounts, core::PaletteIndex colour) const;

    core::Point fillButton() const { return m_geometry.fillButton.value_or(core::Point{}); }

    /// Press on the first cell of the stroke, drag along its path, release.
    std::int64_t strokeMs(const Stroke& stroke) const;

private:
    core::CanvasGeometry m_geometry;
    core::PointerTiming m_timing;
    core::Point m_start;
    int m_stepDown;
    int m_jumpCells;
};

/// The plan of `strokes` in that order, after a fill if there is one, with its picks, lifts and
/// time.
Plan timedPlan(std::vector<Stroke> strokes, const TimeModel& model,
               std::optional<core::PaletteIndex> fill = std::nullopt);

/// How many steps of at most `step` counts a way of `counts` counts needs.
constexpr int stepsFor(int counts, int step) {
    return (counts + step - 1) / step;
}

/// The longer of the two sides of the way from `a` to `b`: both axes move in one report.
int longerSide(core::Point a, core::Point b);

}  // namespace pantile::drawing
