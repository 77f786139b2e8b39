#include "drawing/timing.h"

#include <algorithm>
#include <cassert>
#include <cstdlib>
#include <optional>
#include <utility>

namespace pantile::drawing {
namespace {

/// The Lines pen fills whatever lies between two reports. The others paint reliably only where
/// reports follow at most a cell apart, so that none is skipped.
int largestStepDown(const core::Canvas& canvas, const core::PointerTiming& timing) {
    if (canvas.penModel == core::PenModel::Lines) return timing.maxStepDown;
    return std::min(timing.maxStepDown, canvas.geometry.cellPitch);
}

}  // namespace

int longerSide(core::Point a, core::Point b) {
    return std::max(std::abs(b.x - a.x), std::abs(b.y - a.y));
}

TimeModel::TimeModel(const core::Canvas& canvas, const core::PointerTiming& timing)
    : m_geometry(canvas.geometry), m_timing(timing), m_stepDown(largestStepDown(canvas, timing)) {}

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

std::int64_t TimeModel::strokeMs(const Stroke& stroke) const {
    assert(!stroke.path.empty());
    std::int64_t total = clickMs();
    for (std::size_t i = 1; i < stroke.path.size(); ++i) {
        total += dragMs(stroke.path[i - 1], stroke.path[i]);
    }
    return total;
}

Plan timedPlan(std::vector<Stroke> strokes, const TimeModel& model) {
    Plan plan;
    core::Point pen = model.start();
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
