#include "drawing/pen_ways.h"

#include <algorithm>

namespace pantile::drawing {
namespace {

/// An aslant step ends in the cell meant only if one report makes it.
bool stepsAslant(const core::Canvas& canvas, const TimeModel& model) {
    const bool knowsAslant =
        canvas.penModel == core::PenModel::Diagonals || canvas.penModel == core::PenModel::Sampled;
    return knowsAslant && model.stepDown() == model.cellPitch();
}

}  // namespace

PenWays::PenWays(const DrawingRequest& request, const TimeModel& model)
    : grid(request.grid.size()),
      stepMs(model.dragMs({0, 0}, {1, 0})),
      stride(std::max(1, model.stepDown() / model.cellPitch())),
      aslant(stepsAslant(request.canvas, model)) {
    const int longest = std::max(grid.width, grid.height);
    for (int cells = 0; cells <= longest; ++cells) {
        liftMs.push_back(model.clickMs() +
                         model.travelMs(model.cellCentre({0, 0}), model.cellCentre({cells, 0})));
    }
    const auto pays = [&](int steps) {
        return steps * stepMs < liftMs[static_cast<std::size_t>(std::min(steps, longest))];
    };
    while (depth < kMostDepth && pays(depth + 1)) ++depth;
    reach = std::min({depth, kMostReach, longest});
}

}  // namespace pantile::drawing
