#include "board/calibration.h"

#include <algorithm>
#include <array>
#include <string>
#include <vector>

#include "core/palette_bar.h"
#include "drawing/timing.h"

namespace pantile::board {
namespace {

using core::Error;
using core::ErrorKind;
using core::Point;
using core::Result;

constexpr int kLeastSide = 16;

/// One axis of the calibration, in cells as they are drawn.
struct Axis {
    int near = 0;
    int far = 0;
    std::vector<int> ticks;
};

/// A quarter of the canvas is left free: a guess that is too large still stays on it.
Axis axisOf(int side) {
    Axis axis;
    axis.near = 2;
    axis.far = side * 3 / 4;
    for (int tick = axis.near + 4; tick <= axis.far; tick += 2) axis.ticks.push_back(tick);
    return axis;
}

int drawnPitch(const core::Canvas& canvas) {
    return std::max(1, canvas.geometry.cellPitch - 1);
}

Result<void> checkCalibrated(const core::Canvas& canvas) {
    PANTILE_RETURN_IF_ERROR(core::checkUnnamedCanvas(canvas));
    if (canvas.size.width >= kLeastSide && canvas.size.height >= kLeastSide) return {};
    return Error{
        ErrorKind::InvalidInput,
        "a canvas of " + std::to_string(canvas.size.width) + " x " +
            std::to_string(canvas.size.height) + " cells is too small for the rulers",
        "calibrate a canvas of at least 16 x 16 cells; pitch and origin are the toolkit's"};
}

std::vector<Point> dotsOf(const Axis& across, const Axis& down) {
    std::vector<Point> dots = {{across.near, down.near}, {across.far, down.near}};
    for (const int tick : across.ticks) dots.push_back({tick, down.near + 2});
    for (const int tick : down.ticks) dots.push_back({across.near + 2, tick});
    dots.push_back({across.near, down.far});
    dots.push_back({across.far, down.far});
    return dots;
}

/// A toolkit's cells on one axis: their side, and where the first begins.
struct Cells {
    int pitch = 0;
    int edge = 0;

    int at(int place) const {
        const int beyond = place - edge;
        return beyond >= 0 ? beyond / pitch : -((-beyond + pitch - 1) / pitch);
    }

    int centre() const { return edge + pitch / 2; }
};

/// What was drawn and read on one axis.
struct AxisReading {
    Axis axis;
    int origin = 0;  ///< Count of the drawn cell 0.
    int pitch = 0;   ///< Counts from one drawn cell to the next.
    int near = 0;
    int far = 0;
    std::optional<int> pair;

    int place(int cell) const { return origin + cell * pitch; }

    bool fits(const Cells& cells) const {
        return cells.at(place(axis.near)) == near && cells.at(place(axis.far)) == far &&
               (!pair || firstPair(cells) == pair);
    }

    std::optional<int> firstPair(const Cells& cells) const {
        for (std::size_t i = 1; i < axis.ticks.size(); ++i) {
            const int tick = cells.at(place(axis.ticks[i]));
            if (tick - cells.at(place(axis.ticks[i - 1])) == 1) return tick;
        }
        return std::nullopt;
    }
};

AxisReading drawnAcross(const core::Canvas& canvas) {
    return {axisOf(canvas.size.width), canvas.geometry.gridCentre.x, drawnPitch(canvas), 0, 0, {}};
}

AxisReading drawnDown(const core::Canvas& canvas) {
    return {axisOf(canvas.size.height), canvas.geometry.gridCentre.y, drawnPitch(canvas), 0, 0, {}};
}

/// The origins, counted at the first cell's centre, that one pitch leaves open.
struct Origins {
    int least = core::kMaxCounts + 1;
    int most = -1;

    bool any() const { return least <= most; }

    int middle() const { return least + (most - least) / 2; }

    int unsure() const { return (most - least + 1) / 2; }
};

Origins originsFor(const AxisReading& reading, int pitch) {
    Origins origins;
    // The near mark lies in its cell: that leaves one pitch of places for the first cell's edge.
    const int last = reading.place(reading.axis.near) - reading.near * pitch;
    for (int edge = last - pitch + 1; edge <= last; ++edge) {
        const Cells cells{pitch, edge};
        if (cells.centre() < 0 || cells.centre() > core::kMaxCounts || !reading.fits(cells))
            continue;
        origins.least = std::min(origins.least, cells.centre());
        origins.most = std::max(origins.most, cells.centre());
    }
    return origins;
}

Result<void> checkReading(const core::Canvas& canvas, const CalibrationReading& reading) {
    const std::array<std::pair<int, int>, 6> numbers = {
        {{reading.near.x, canvas.size.width},
         {reading.near.y, canvas.size.height},
         {reading.far.x, canvas.size.width},
         {reading.far.y, canvas.size.height},
         {reading.pairColumn.value_or(0), canvas.size.width},
         {reading.pairRow.value_or(0), canvas.size.height}}};
    for (const auto& [number, limit] : numbers) {
        if (number >= 0 && number < limit) continue;
        return Error{ErrorKind::InvalidInput,
                     "the canvas has no cell " + std::to_string(number) + ": it has " +
                         std::to_string(limit) + ", counted from 0",
                     "read the cells off again"};
    }
    if (reading.far.x > reading.near.x && reading.far.y > reading.near.y) return {};
    return Error{ErrorKind::InvalidInput,
                 "the far mark does not lie to the right of and below the "
                 "near one",
                 "the near mark is the one at the top left, the far one at the bottom right"};
}

}  // namespace

Result<LoadSlot> calibrationSlot(const core::Canvas& canvas, const core::PointerTiming& timing) {
    PANTILE_RETURN_IF_ERROR(checkCalibrated(canvas));
    PANTILE_RETURN_IF_ERROR(core::checkTiming(timing));
    constexpr core::PaletteIndex kInk = 0;
    constexpr core::PaletteIndex kNothing = 1;
    core::Canvas drawn = canvas;
    drawn.palette.reset();
    drawn.freeColours = 2;
    drawn.geometry.cellPitch = drawnPitch(canvas);
    PANTILE_RETURN_IF_ERROR(core::checkSwatch(kInk, drawn));
    PANTILE_ASSIGN_OR_RETURN(core::Grid grid,
                             core::Grid::filled(canvas.size.width, canvas.size.height, kNothing));
    PANTILE_ASSIGN_OR_RETURN(core::Palette palette,
                             core::Palette::create({{0, 0, 0}, {255, 255, 255}}, kNothing));
    std::vector<drawing::Stroke> strokes;
    for (const Point dot : dotsOf(axisOf(canvas.size.width), axisOf(canvas.size.height))) {
        grid.set(dot.x, dot.y, kInk);
        strokes.push_back({kInk, {dot}});
    }
    drawing::Plan plan = drawing::timedPlan(std::move(strokes), drawing::TimeModel(drawn, timing));
    return LoadSlot{"Calibration", std::move(grid), std::move(palette), std::move(drawn),
                    std::move(plan)};
}

Result<Calibrated> calibratedFrom(const core::Canvas& canvas, const CalibrationReading& reading) {
    PANTILE_RETURN_IF_ERROR(checkCalibrated(canvas));
    PANTILE_RETURN_IF_ERROR(checkReading(canvas, reading));
    AxisReading across = drawnAcross(canvas);
    across.near = reading.near.x;
    across.far = reading.far.x;
    across.pair = reading.pairColumn;
    AxisReading down = drawnDown(canvas);
    down.near = reading.near.y;
    down.far = reading.far.y;
    down.pair = reading.pairRow;

    struct Way {
        int pitch;
        Origins x;
        Origins y;
    };

    std::vector<Way> ways;
    for (int pitch = 1; pitch <= core::kMaxPitch; ++pitch) {
        const Way way{pitch, originsFor(across, pitch), originsFor(down, pitch)};
        if (way.x.any() && way.y.any()) ways.push_back(way);
    }
    if (ways.empty()) {
        return Error{ErrorKind::InvalidInput, "no pitch and origin explain these cells",
                     "read them off again; if they are right, motion was dropped: give the board "
                     "a smaller step or a longer report interval, and draw the calibration again"};
    }
    const Way& way = ways[(ways.size() - 1) / 2];
    return Calibrated{way.pitch,
                      {way.x.middle(), way.y.middle()},
                      ways.front().pitch,
                      ways.back().pitch,
                      {way.x.unsure(), way.y.unsure()}};
}

bool isSettled(const Calibrated& found, const CalibrationReading& reading) {
    return found.leastPitch == found.mostPitch && reading.pairColumn && reading.pairRow;
}

Result<CalibrationSight> calibrationOn(const core::Canvas& canvas, int cellPitch,
                                       Point gridCentre) {
    PANTILE_RETURN_IF_ERROR(checkCalibrated(canvas));
    core::CanvasGeometry real = canvas.geometry;
    real.cellPitch = cellPitch;
    real.gridCentre = gridCentre;
    PANTILE_RETURN_IF_ERROR(core::checkGeometry(real));
    const AxisReading across = drawnAcross(canvas);
    const AxisReading down = drawnDown(canvas);
    const Cells columns{cellPitch, gridCentre.x - cellPitch / 2};
    const Cells rows{cellPitch, gridCentre.y - cellPitch / 2};
    const auto seen = [&](Point drawn) {
        return Point{columns.at(across.place(drawn.x)), rows.at(down.place(drawn.y))};
    };
    CalibrationSight sight;
    for (const Point dot : dotsOf(across.axis, down.axis)) {
        const Point cell = seen(dot);
        const bool isThere =
            cell.x >= 0 && cell.y >= 0 && cell.x < canvas.size.width && cell.y < canvas.size.height;
        if (isThere) sight.cells.push_back(cell);
    }
    sight.reading = {seen({across.axis.near, down.axis.near}),
                     seen({across.axis.far, down.axis.far}), across.firstPair(columns),
                     down.firstPair(rows)};
    const Point ticks = seen({across.axis.near + 2, down.axis.near + 2});
    sight.tickRow = ticks.y;
    sight.tickColumn = ticks.x;
    return sight;
}

}  // namespace pantile::board
