#include "drawing/planner.h"

#include <utility>

#include "drawing/colour_order.h"
#include "drawing/plan_layers.h"
#include "drawing/straight_runs.h"
#include "drawing/timing.h"
#include "drawing/tours.h"

namespace pantile::drawing {
namespace {

Stroke strokeOf(const StraightRun& run, core::PaletteIndex colour) {
    if (run.from == run.to) return {colour, {run.from}};
    return {colour, {run.from, run.to}};
}

void appendStrokes(std::vector<Stroke>& strokes, const Runs& runs, core::PaletteIndex colour) {
    for (const StraightRun& run : runs) strokes.push_back(strokeOf(run, colour));
}

core::Result<std::vector<ColourTours>> toursByColour(const DrawingRequest& request,
                                                     const TimeModel& model,
                                                     const core::Progress& progress) {
    const std::vector<Runs> rows = rowRuns(request);
    const std::vector<Runs> columns = columnRuns(request);
    std::vector<ColourTours> colours;
    for (std::size_t i = 0; i < rows.size(); ++i) {
        if (progress.stopRequested()) {
            return core::Error{core::ErrorKind::Cancelled, "planning the drawing was stopped", ""};
        }
        progress.tell(static_cast<std::int64_t>(i), static_cast<std::int64_t>(rows.size()),
                      "planning strokes");
        if (rows[i].empty()) continue;
        const auto colour = static_cast<core::PaletteIndex>(i);
        colours.push_back(
            {colour, toursOf(colour, rows[i], columns[i], request.grid.size(), model)});
    }
    return colours;
}

}  // namespace

core::Result<Plan> planDrawing(const DrawingRequest& request, const core::Progress& progress,
                               const Effort& effort) {
    PANTILE_ASSIGN_OR_RETURN(Plan straight, planStraight(request, progress));
    if (!request.rules.turns) return straight;
    PANTILE_ASSIGN_OR_RETURN(Plan layered, planLayers(request, progress, effort));
    return layered.milliseconds < straight.milliseconds ? layered : straight;
}

core::Result<Plan> planStraight(const DrawingRequest& request, const core::Progress& progress) {
    PANTILE_RETURN_IF_ERROR(checkRequest(request));
    const TimeModel model(request.canvas, request.timing);
    PANTILE_ASSIGN_OR_RETURN(const std::vector<ColourTours> colours,
                             toursByColour(request, model, progress));
    std::vector<Stroke> strokes;
    for (const Leg& leg : orderColours(colours, model)) {
        const ColourTours& chosen = colours[leg.colour];
        appendStrokes(strokes, chosen.tours[leg.tour].runs, chosen.colour);
    }
    return timedPlan(std::move(strokes), model);
}

Plan planRowByRow(const DrawingRequest& request) {
    const std::vector<Runs> rows = rowRuns(request);
    std::vector<Stroke> strokes;
    for (std::size_t i = 0; i < rows.size(); ++i) {
        appendStrokes(strokes, serpentine(rows[i], Lines::Rows, Corner::FirstForwards),
                      static_cast<core::PaletteIndex>(i));
    }
    return timedPlan(std::move(strokes), TimeModel(request.canvas, request.timing));
}

}  // namespace pantile::drawing
