// lowerBoundMs: the proof, with the same letters, is in docs/drawing.md section 6.

#include <algorithm>
#include <array>
#include <cstdint>
#include <limits>
#include <optional>

#include "drawing/fill.h"
#include "drawing/planner.h"
#include "drawing/timing.h"

namespace pantile::drawing {
namespace {

/// What one colour asks of every plan.
struct Need {
    std::int64_t cells = 0;
    std::int64_t travelMs = std::numeric_limits<std::int64_t>::max();  ///< Grid to swatch, or back.
};

/// The e of the proof: a drag over p counts paints at most one more cell for each report of e.
/// Where reports may end aslant of cell centres, only this is sure: each paints at most one cell.
int countsOfAReport(core::PenModel pen, const TimeModel& model) {
    switch (pen) {
        case core::PenModel::WholeCells:
        case core::PenModel::Lines:
            return model.stepDown();
        case core::PenModel::Diagonals:
        case core::PenModel::Sampled:
            return model.cellPitch();
    }
    return model.cellPitch();
}

/// The least time for the strokes that paint n cells: all in one drag, or each with a click of its
/// own. Anything between lies between.
std::int64_t paintingMs(std::int64_t cells, core::PenModel pen, const TimeModel& model) {
    const std::int64_t interval = model.timing().reportIntervalMs;
    const std::int64_t dragged = interval * (cells - 1) * model.cellPitch();
    const int counts = countsOfAReport(pen, model);
    const std::int64_t oneDrag = model.clickMs() + (dragged + counts - 1) / counts;
    const std::int64_t allClicks = model.clickMs() * cells + interval * (cells - 1);
    return std::min(oneDrag, allClicks);
}

using Needs = std::array<Need, 256>;

void countCells(const DrawingRequest& request, Needs& needs) {
    for (const core::PaletteIndex index : request.grid.cells()) {
        if (index != request.leaveUnpainted) ++needs[index].cells;
    }
}

/// A stroke may begin or end on any painted cell, as later colours may cover what it touches.
void measureTravel(const DrawingRequest& request, const TimeModel& model, Needs& needs) {
    for (int colour = 0; colour < static_cast<int>(needs.size()); ++colour) {
        Need& need = needs[static_cast<std::size_t>(colour)];
        if (need.cells == 0) continue;
        const core::Point swatch = model.swatch(static_cast<core::PaletteIndex>(colour));
        for (int y = 0; y < request.grid.height(); ++y) {
            for (int x = 0; x < request.grid.width(); ++x) {
                if (!request.isPainted({x, y})) continue;
                need.travelMs =
                    std::min(need.travelMs, model.travelMs(model.cellCentre({x, y}), swatch));
            }
        }
    }
}

/// What every plan takes for the strokes of one colour, with its pick and one way each to the grid
/// and back.
std::int64_t colourMs(const Need& need, core::PenModel pen, const TimeModel& model) {
    return model.clickMs() + model.timing().settleMs + paintingMs(need.cells, pen, model) +
           2 * need.travelMs;
}

/// The sums over all colours, for drawings that begin at `start`. With `left`, that colour needs no
/// stroke.
std::int64_t strokesMs(const Needs& needs, core::PenModel pen, const TimeModel& model,
                       core::Point start, std::optional<std::size_t> left) {
    std::int64_t total = 0;
    std::int64_t firstWay = std::numeric_limits<std::int64_t>::max();
    for (std::size_t i = 0; i < needs.size(); ++i) {
        if (needs[i].cells == 0 || i == left) continue;
        const core::Point swatch = model.swatch(static_cast<core::PaletteIndex>(i));
        total += colourMs(needs[i], pen, model);
        firstWay = std::min(firstWay, model.travelMs(start, swatch) - needs[i].travelMs);
    }
    return total == 0 ? 0 : total + firstWay;
}

/// Plans whose last fill has the colour `fill`: its pick, its click, and what is drawn behind it.
std::int64_t filledMs(const Needs& needs, core::PenModel pen, const TimeModel& model,
                      std::size_t fill) {
    const core::PointerTiming& timing = model.timing();
    const core::Point swatch = model.swatch(static_cast<core::PaletteIndex>(fill));
    const bool nothingFaster = timing.maxStepDown <= timing.maxStepUp;
    const std::int64_t ways = nothingFaster ? model.travelMs(model.start(), swatch) +
                                                  model.travelMs(swatch, model.fillButton())
                                            : 0;
    const std::int64_t clicks = 2 * (model.clickMs() + timing.settleMs);
    return ways + clicks + strokesMs(needs, pen, model, model.fillButton(), fill);
}

}  // namespace

std::int64_t lowerBoundMs(const DrawingRequest& request) {
    const TimeModel model(request.canvas, request.timing);
    const core::PenModel pen = request.canvas.penModel;
    Needs needs{};
    countCells(request, needs);
    measureTravel(request, model, needs);
    std::int64_t least = strokesMs(needs, pen, model, model.start(), std::nullopt);
    if (!canFill(request)) return least;
    // A fill that is all painted over again.
    const std::int64_t clicks = 2 * (model.clickMs() + model.timing().settleMs);
    least =
        std::min(least, clicks + strokesMs(needs, pen, model, model.fillButton(), std::nullopt));
    for (std::size_t i = 0; i < needs.size(); ++i) {
        if (needs[i].cells > 0) least = std::min(least, filledMs(needs, pen, model, i));
    }
    return least;
}

}  // namespace pantile::drawing
