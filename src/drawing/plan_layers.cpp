#include "drawing/plan_layers.h"

#include <algorithm>
#include <utility>

#include "drawing/covering_order.h"
#include "drawing/layered_plan.h"

namespace pantile::drawing {
namespace {

/// Cells that the search for an order of colours may visit before the first plan.
constexpr std::int64_t kMostOrderWork = 4'000'000;
/// Cells that the search for visits looks at in the time of a try.
constexpr std::int64_t kCellsOfATry = 300;

std::int64_t paintedCells(const DrawingRequest& request) {
    const auto cells = request.grid.cells();
    return std::count_if(cells.begin(), cells.end(),
                         [&](core::PaletteIndex index) { return index != request.leaveUnpainted; });
}

std::int64_t triesFor(const Effort& effort, std::int64_t cells) {
    if (effort.triesPerCell == 0) return 0;
    return std::min(std::max(effort.triesPerCell * cells, effort.leastTries), effort.mostTries);
}

/// `layers`, or a plan that comes back to colours if one is found that is quicker; what is sought
/// takes some of the `tries`.
core::Result<LayeredPlan> comingBackFrom(LayeredPlan layers, const std::vector<Part>& order,
                                         const DrawingRequest& request, const TimeModel& model,
                                         const core::Progress& progress, std::uint64_t seed,
                                         std::int64_t& tries) {
    const PenWays ways(request, model);
    if (tries == 0 || !mayComeBack(request, ways)) return layers;
    VisitEffort effort{tries / 2 * kCellsOfATry, seed};
    PANTILE_ASSIGN_OR_RETURN(Visits visits,
                             seekVisits(request, model, ways, order, effort, progress));
    tries -= std::min(effort.work / kCellsOfATry, tries / 2);
    if (visits.order.size() == order.size()) return layers;
    PANTILE_ASSIGN_OR_RETURN(LayeredPlan comingBack,
                             LayeredPlan::create(request, model, std::move(visits), progress));
    return comingBack.milliseconds() < layers.milliseconds() ? comingBack : layers;
}

}  // namespace

core::Result<Plan> planLayers(const DrawingRequest& request, const TimeModel& model,
                              const core::Progress& progress, const Effort& effort) {
    const PenWays ways(request, model);
    LeastTree trees(request, ways);
    const std::vector<Part> order = coveringOrder(trees, kMostOrderWork);
    PANTILE_ASSIGN_OR_RETURN(
        LayeredPlan layers,
        LayeredPlan::create(request, model, {Parts::wholeColours(request), order}, progress));
    std::int64_t tries = triesFor(effort, paintedCells(request));
    PANTILE_ASSIGN_OR_RETURN(LayeredPlan best, comingBackFrom(std::move(layers), order, request,
                                                              model, progress, effort.seed, tries));
    PANTILE_RETURN_IF_ERROR(best.improve(tries, effort.seed, progress));
    return timedPlan(best.strokes(), model);
}

}  // namespace pantile::drawing
