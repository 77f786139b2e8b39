#pragma once

// Seeded random loads whose plans turn, cross themselves, paint over, jump and fill; made without
// the planner: the grid of a slot is what its random strokes paint, worked out here cell by cell.

#include <algorithm>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "board/load.h"
#include "core/board.h"
#include "drawing/timing.h"
#include "support/random.h"

namespace pantile::tests {

inline core::PointerTiming randomTiming(Random& random) {
    core::PointerTiming timing;
    timing.reportIntervalMs = random.between(1, 12);
    timing.maxStepUp = random.between(5, 127);
    timing.maxStepDown = random.between(1, 40);
    timing.pressMs = random.between(1, 60);
    timing.releaseMs = random.between(1, 60);
    timing.settleMs = random.between(0, 3) == 0 ? 0 : random.between(1, 300);
    return timing;
}

inline core::Canvas randomCanvas(Random& random, core::Size least, core::PenModel penModel) {
    core::Canvas canvas;
    canvas.name = "random";
    canvas.size = {least.width + random.between(0, 3), least.height + random.between(0, 3)};
    canvas.penModel = penModel;
    core::CanvasGeometry& geometry = canvas.geometry;
    geometry.cellPitch = random.between(3, 12);
    geometry.gridCentre = {random.between(6, 400), random.between(6, 300)};
    geometry.swatchPitch = random.between(4, 20);
    geometry.swatchesPerColumn = random.between(1, 16);
    geometry.swatchCentre = {geometry.gridCentre.x + canvas.size.width * geometry.cellPitch +
                                 geometry.swatchPitch + random.between(0, 30),
                             random.between(10, 300)};
    return canvas;
}

/// One random way from `from`, straight or (with the pen for it) diagonal; the same cell if the
/// first try leaves the grid.
inline core::Point randomWay(Random& random, core::Point from, core::Size grid, bool diagonal) {
    const int length = random.between(1, 40);
    const int dx = random.between(-1, 1);
    const int dy = dx == 0 || diagonal ? random.between(-1, 1) : 0;
    core::Point to = from;
    for (int i = 0; i < length; ++i) {
        const core::Point next = {to.x + dx, to.y + dy};
        if (next.x < 0 || next.y < 0 || next.x >= grid.width || next.y >= grid.height) break;
        to = next;
    }
    return to;
}

inline void paintWay(core::Grid& grid, core::Point from, core::Point to,
                     core::PaletteIndex colour) {
    const int dx = (to.x > from.x) - (to.x < from.x);
    const int dy = (to.y > from.y) - (to.y < from.y);
    for (core::Point p = from;; p = {p.x + dx, p.y + dy}) {
        grid.set(p.x, p.y, colour);
        if (p == to) return;
    }
}

/// Jumps to another cell, if the grid has one within reach; tells where the pen is then.
inline core::Point jumpOn(Random& random, core::Grid& grid, drawing::Stroke& stroke, int most) {
    const core::Point pen = stroke.path.back();
    const core::Point to = {std::clamp(pen.x + random.between(-most, most), 0, grid.width() - 1),
                            std::clamp(pen.y + random.between(-most, most), 0, grid.height() - 1)};
    if (to == pen) return pen;
    stroke.path.push_back(to);
    stroke.jumps.resize(stroke.path.size());
    stroke.jumps.back() = true;
    grid.set(to.x, to.y, stroke.colour);
    return to;
}

/// A stroke of pieces and, if the pen can, jumps; painted. Two pieces after one another go in
/// different directions.
inline drawing::Stroke randomStroke(Random& random, core::Grid& grid, core::PaletteIndex colour,
                                    bool diagonal, int jumpCells, int mostPieces) {
    core::Point pen = {random.between(0, grid.width() - 1), random.between(0, grid.height() - 1)};
    drawing::Stroke stroke = {colour, {pen}};
    grid.set(pen.x, pen.y, colour);
    core::Point last;
    const int pieces = random.between(0, mostPieces);
    for (int i = 0; i < pieces; ++i) {
        if (jumpCells > 0 && random.between(0, 1) == 0) {
            pen = jumpOn(random, grid, stroke, jumpCells);
            last = {};
            continue;
        }
        const core::Point to = randomWay(random, pen, grid.size(), diagonal);
        const core::Point step = {(to.x > pen.x) - (to.x < pen.x), (to.y > pen.y) - (to.y < pen.y)};
        if (to == pen || step == last) continue;
        paintWay(grid, pen, to, colour);
        stroke.path.push_back(to);
        pen = to;
        last = step;
    }
    return stroke;
}

/// Runs along rows, from left to right and from top to bottom; painted. A few do not begin as far
/// behind the one before as such runs do.
inline std::vector<drawing::Stroke> randomRuns(Random& random, core::Grid& grid,
                                               core::PaletteIndex colour) {
    std::vector<drawing::Stroke> strokes;
    const int cells = grid.width() * grid.height();
    for (int place = random.between(0, 40); place < cells; place += random.between(1, 30)) {
        const core::Point from = {place % grid.width(), place / grid.width()};
        const core::Point to = {std::min(from.x + random.between(0, 3), grid.width() - 1), from.y};
        paintWay(grid, from, to, colour);
        strokes.push_back({colour, {from}});
        if (to != from) strokes.back().path.push_back(to);
        place = to.y * grid.width() + to.x;
    }
    return strokes;
}

/// Colour 0 is transparent, so cells that no stroke meets stay as they are meant to.
inline board::LoadSlot randomSlot(Random& random, const core::PointerTiming& timing) {
    const core::Size size = {random.between(1, 24), random.between(1, 24)};
    const auto penModel = static_cast<core::PenModel>(random.between(0, 3));
    const int colours = random.between(2, 20);
    std::vector<core::Rgb8> palette;
    for (int i = 0; i < colours; ++i) {
        const std::uint64_t bits = random.next();
        palette.push_back({static_cast<std::uint8_t>(bits), static_cast<std::uint8_t>(bits >> 8U),
                           static_cast<std::uint8_t>(bits >> 16U)});
    }
    core::Canvas canvas = randomCanvas(random, size, penModel);
    canvas.freeColours = colours;
    canvas.rules.turns = random.between(0, 5) != 0;
    canvas.rules.leaving = static_cast<core::PenLeaving>(random.between(0, 1));
    std::optional<core::PaletteIndex> fill;
    if (random.between(0, 3) == 0) {
        fill = static_cast<core::PaletteIndex>(random.between(1, colours - 1));
        canvas.size = size;
        core::CanvasGeometry& g = canvas.geometry;
        g.fillButton = core::Point{g.swatchCentre.x + colours * g.swatchPitch, g.gridCentre.y};
    }
    core::Grid grid = *core::Grid::filled(size.width, size.height, fill.value_or(0));

    // A diagonal that takes several reports for a cell may land on the border of a third one.
    const bool diagonal =
        (penModel == core::PenModel::Diagonals || penModel == core::PenModel::Sampled) &&
        timing.maxStepDown >= canvas.geometry.cellPitch;
    const drawing::TimeModel model(canvas, timing);
    std::vector<drawing::Stroke> strokes;
    for (int left = random.between(1, 30); left > 0; --left) {
        const auto colour = static_cast<core::PaletteIndex>(random.between(1, colours - 1));
        if (random.between(0, 9) == 0) {
            const std::vector<drawing::Stroke> runs = randomRuns(random, grid, colour);
            strokes.insert(strokes.end(), runs.begin(), runs.end());
        } else {
            strokes.push_back(randomStroke(random, grid, colour, diagonal, model.jumpCells(),
                                           canvas.rules.turns ? 6 : 1));
        }
    }
    drawing::Plan plan = drawing::timedPlan(std::move(strokes), model, fill);
    std::string title = "Kelp bed " + std::to_string(random.between(1, 9999));
    return {std::move(title), std::move(grid),
            *core::Palette::create(std::move(palette), core::PaletteIndex{0}), std::move(canvas),
            std::move(plan)};
}

inline board::Load randomLoad(std::uint64_t seed, int mostSlots) {
    Random random(seed);
    board::Load load;
    load.name = "Low tide " + std::to_string(seed);
    load.timing = randomTiming(random);
    const int slots = random.between(1, mostSlots);
    for (int i = 0; i < slots; ++i) load.slots.push_back(randomSlot(random, load.timing));
    return load;
}

/// A board on which every random load fits.
inline core::Board roomyBoard() {
    core::Board board;
    board.name = "roomy";
    board.slots = 255;
    board.bytes = 1 << 24;
    return board;
}

}  // namespace pantile::tests
