#include "drawing/planner.h"

#include <optional>
#include <utility>

#include "drawing/colour_order.h"
#include "drawing/fill.h"
#include "drawing/go_on.h"
#include "drawing/jumps.h"
#include "drawing/plan_layers.h"
#include "drawing/straight_runs.h"
#include "drawing/timing.h"
#include "drawing/tours.h"

namespace pantile::drawing {
namespace {

core::Result<std::vector<ColourTours>> toursByColour(const DrawingRequest& request,
                                                     const TimeModel& model,
                                                     const core::Progress& progress) {
    const std::vector<Runs> rows = rowRuns(request);
    const std::vector<Runs> columns = columnRuns(request);
    std::vector<ColourTours> colours;
    for (std::size_t i = 0; i < rows.size(); ++i) {
        PANTILE_RETURN_IF_ERROR(
            goOn(progress, static_cast<std::int64_t>(i), static_cast<std::int64_t>(rows.size())));
        if (rows[i].empty()) continue;
        const auto colour = static_cast<core::PaletteIndex>(i);
        colours.push_back(
            {colour, toursOf(colour, rows[i], columns[i], request.grid.size(), model)});
    }
    return colours;
}

core::Result<std::vector<Stroke>> straightStrokes(const DrawingRequest& request,
                                                  const TimeModel& model,
                                                  const core::Progress& progress) {
    PANTILE_ASSIGN_OR_RETURN(const std::vector<ColourTours> colours,
                             toursByColour(request, model, progress));
    std::vector<Stroke> strokes;
    for (const Leg& leg : orderColours(colours, model)) {
        const ColourTours& chosen = colours[leg.colour];
        appendJoined(strokes, chosen.tours[leg.tour].runs, chosen.colour, model);
    }
    return strokes;
}

/// The quicker one of layers and straight strokes, after the canvas was filled with `fill`: whose
/// cells need no stroke then, and may not be touched.
core::Result<Plan> planAfterFill(const DrawingRequest& request,
                                 std::optional<core::PaletteIndex> fill,
                                 const core::Progress& progress, const Effort& effort) {
    const TimeModel whole(request.canvas, request.timing);
    const TimeModel model = fill ? whole.startingAt(whole.fillButton()) : whole;
    DrawingRequest rest = request;
    if (fill) rest.leaveUnpainted = fill;
    PANTILE_ASSIGN_OR_RETURN(auto straightOnes, straightStrokes(rest, model, progress));
    Plan straight = timedPlan(std::move(straightOnes), whole, fill);
    if (!request.canvas.rules.turns) return straight;
    PANTILE_ASSIGN_OR_RETURN(Plan layers, planLayers(rest, model, progress, effort));
    Plan layered = timedPlan(std::move(layers.strokes), whole, fill);
    return layered.milliseconds < straight.milliseconds ? layered : straight;
}

/// What to fill the canvas with, if anything, as first plans tell.
core::Result<std::optional<core::PaletteIndex>> chooseFill(const DrawingRequest& request,
                                                           const core::Progress& progress) {
    std::optional<core::PaletteIndex> best;
    const std::vector<core::PaletteIndex> candidates = fillCandidates(request);
    if (candidates.empty()) return best;
    Effort firstPlan;
    firstPlan.triesPerCell = 0;
    PANTILE_ASSIGN_OR_RETURN(const Plan without,
                             planAfterFill(request, std::nullopt, progress, firstPlan));
    std::int64_t least = without.milliseconds;
    for (const core::PaletteIndex colour : candidates) {
        PANTILE_ASSIGN_OR_RETURN(const Plan with,
                                 planAfterFill(request, colour, progress, firstPlan));
        if (with.milliseconds >= least) continue;
        least = with.milliseconds;
        best = colour;
    }
    return best;
}

}  // namespace

core::Result<Plan> planDrawing(const DrawingRequest& request, const core::Progress& progress,
                               const Effort& effort) {
    PANTILE_RETURN_IF_ERROR(checkRequest(request));
    PANTILE_ASSIGN_OR_RETURN(const auto fill, chooseFill(request, progress));
    return planAfterFill(request, fill, progress, effort);
}

core::Result<Plan> planStraight(const DrawingRequest& request, const core::Progress& progress) {
    PANTILE_RETURN_IF_ERROR(checkRequest(request));
    const TimeModel model(request.canvas, request.timing);
    PANTILE_ASSIGN_OR_RETURN(auto strokes, straightStrokes(request, model, progress));
    return timedPlan(std::move(strokes), model);
}

Plan planRowByRow(const DrawingRequest& request) {
    const std::vector<Runs> rows = rowRuns(request);
    std::vector<Stroke> strokes;
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const auto colour = static_cast<core::PaletteIndex>(i);
        for (const StraightRun& run : serpentine(rows[i], Lines::Rows, Corner::FirstForwards)) {
            strokes.push_back(strokeOf(run, colour));
        }
    }
    return timedPlan(std::move(strokes), TimeModel(request.canvas, request.timing));
}

}  // namespace pantile::drawing
