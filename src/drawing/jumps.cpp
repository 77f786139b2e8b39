#include "drawing/jumps.h"

#include <cstdint>

namespace pantile::drawing {
namespace {

void jumpTo(Stroke& stroke, core::Point cell) {
    // A drag to a neighbour takes the same report as a jump there.
    const bool isNeighbour = longerSide(stroke.path.back(), cell) == 1;
    stroke.path.push_back(cell);
    if (isNeighbour) return;
    stroke.jumps.resize(stroke.path.size());
    stroke.jumps.back() = true;
}

/// The end of a run within a jump of `pen` that is nearest to `target`; `pen` if none is nearer.
core::Point stepTowards(core::Point target, core::Point pen, const Runs& runs,
                        const TimeModel& model) {
    core::Point best = pen;
    for (const StraightRun& run : runs) {
        for (const core::Point end : {run.from, run.to}) {
            const bool nearer = longerSide(end, target) < longerSide(best, target);
            if (nearer && model.canJump(pen, end)) best = end;
        }
    }
    return best;
}

/// The cells on which the pen lands between two that are further apart than a jump. Those of the
/// same colour may be painted once more. Empty if there is no such way, or a lift is as quick.
std::vector<core::Point> landings(core::Point from, core::Point to, const Runs& runs,
                                  const TimeModel& model) {
    std::vector<core::Point> cells;
    const std::int64_t liftMs = model.linkMs(from, to);
    const std::int64_t jumpMs = model.timing().reportIntervalMs;
    for (core::Point pen = from; !model.canJump(pen, to);) {
        const core::Point next = stepTowards(to, pen, runs, model);
        const auto jumps = static_cast<std::int64_t>(cells.size()) + 2;
        if (next == pen || jumps * jumpMs >= liftMs) return {};
        cells.push_back(next);
        pen = next;
    }
    return cells;
}

}  // namespace

Stroke strokeOf(const StraightRun& run, core::PaletteIndex colour) {
    if (run.from == run.to) return {colour, {run.from}};
    return {colour, {run.from, run.to}};
}

void appendJoined(std::vector<Stroke>& strokes, const Runs& runs, core::PaletteIndex colour,
                  const TimeModel& model) {
    const std::size_t first = strokes.size();
    for (const StraightRun& run : runs) {
        std::vector<core::Point> between;
        bool joins = false;
        if (strokes.size() > first && model.jumpCells() > 0) {
            const core::Point pen = strokes.back().path.back();
            if (!model.canJump(pen, run.from)) between = landings(pen, run.from, runs, model);
            joins = model.canJump(pen, run.from) || !between.empty();
        }
        if (!joins) {
            strokes.push_back(strokeOf(run, colour));
            continue;
        }
        Stroke& stroke = strokes.back();
        for (const core::Point cell : between) jumpTo(stroke, cell);
        jumpTo(stroke, run.from);
        if (run.from != run.to) stroke.path.push_back(run.to);
    }
}

}  // namespace pantile::drawing
