#include "drawing/timing.h"

#include <algorithm>
#include <cassert>
#include <cstdlib>
#include <utility>

namespace pantile::drawing {
namespace {

/// The Lines pen fills whatever lies between two reports. The others paint reliably only where
/// reports follow at most a cell apart, so that none is skipped.
int largestStepDown(const core::Canvas& canvas, const core::PointerTiming& timing) {
    if (canvas.penModel == core::PenModel::Lines) return timing.maxStepDown;
    return std::min(timing.maxStepDown, canvas.geometry.cellPitch);
}

int longestJump(const core::Canvas& canvas, const core::PointerTiming& timing) {
    return canvas.penJumps() ? timing.maxStepDown / canvas.geometry.cellPitch : 0;
}

}  // namespace

int longerSide(core::Point a, core::Point b) {
    return std::max(std::abs(b.x - a.x), std::abs(b.y - a.y));
}

TimeModel::TimeModel(const core::Canvas& canvas, const core::PointerTiming& timing)
    : m_geometry(canvas.geometry),
      m_timing(timing),
      m_start(canvas.geometry.cellCentre({0, 0})),
      m_stepDown(largestStepDown(canvas, timing)),
      m_jumpCells(longestJump(canvas, timing)) {}

TimeModel TimeModel::startingAt(core::Point counts) const {
    TimeModel model = *this;
    model.m_start = counts;
    return model;
}

std::int64_t TimeModel::travelMs(core::Point fromCounts, core::Point toCounts) const {
    return std::int64_t{m_timing.reportIntervalMs} *
           stepsFor(longerSide(fromCounts, toCounts), m_timing.maxStepUp);
}

std::int64_t TimeModel::dragMs(core::Point fromCell, core::Point toCell) const {
    return std::int64_t{m_timing.reportIntervalMs} *
           stepsFor(longerSide(fromCell, toCell) * m_geometry.cellPitch, m_stepDown);
}

std::int64_t TimeModel::pickMs(core::Point fromCounts, core::PaletteIndex colour) const {
    return travelMs(fromCounts, swatch(colour)) + clickMs() + m_timing.settleMs;
}

bool TimeModel::canJump(core::Point fromCell, core::Point toCell) const {
    return longerSide(fromCell, toCell) <= m_jumpCells;
}

std::int64_t TimeModel::linkMs(core::Point fromCell, core::Point toCell) const {
    if (canJump(fromCell, toCell)) return m_timing.reportIntervalMs;
    return clickMs() + travelMs(cellCentre(fromCell), cellCentre(toCell));
}

std::int64_t TimeModel::fillMs(core::Point fromCounts, core::PaletteIndex colour) const {
    return pickMs(fromCounts, colour) + travelMs(swatch(colour), fillButton()) + clickMs() +
           m_timing.settleMs;
}

std::int64_t TimeModel::strokeMs(const Stroke& stroke) const {
    assert(!stroke.path.empty());
    std::int64_t total = clickMs();
    for (std::size_t i = 1; i < stroke.path.size(); ++i) {
        total += stroke.jumpsTo(i) ? m_timing.reportIntervalMs
                                   : dragMs(stroke.path[i - 1], stroke.path[i]);
    }
    return total;
}

Plan timedPlan(std::vector<Stroke> strokes, const TimeModel& model,
               std::optional<core::PaletteIndex> fill) {
    Plan plan;
    core::Point pen = model.start();
    if (fill) {
        plan.milliseconds += model.fillMs(pen, *fill);
        plan.fill = fill;
        ++plan.picks;
        pen = model.fillButton();
    }
    std::optional<core::PaletteIndex> picked;
    for (const Stroke& stroke : strokes) {
        if (picked != stroke.colour) {
            plan.milliseconds += model.pickMs(pen, stroke.colour);
            pen = model.swatch(stroke.colour);
            picked = stroke.colour;
            ++plan.picks;
        }
        plan.milliseconds += model.travelMs(pen, model.cellCentre(stroke.path.front()));
        plan.milliseconds += model.strokeMs(stroke);
        pen = model.cellCentre(stroke.path.back());
        ++plan.lifts;
    }
    plan.strokes = std::move(strokes);
    return plan;
}

}  // namespace pantile::drawing
