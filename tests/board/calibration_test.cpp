// Calibrations drawn on a virtual screen whose pitch and origin the program does not know.

#include "board/calibration.h"

#include <algorithm>
#include <cstdlib>

#include <gtest/gtest.h>

#include "board/load_reader.h"
#include "board/load_writer.h"
#include "board/random_load.h"
#include "drawing/reports.h"
#include "player/virtual_screen.h"
#include "support/matchers.h"
#include "support/random.h"

namespace pantile {
namespace {

using core::ErrorKind;
using tests::failsWith;
using tests::isOk;

core::Canvas guessed(int side, int pitch, core::Point origin) {
    core::Canvas canvas;
    canvas.name = "guess";
    canvas.size = {side, side};
    canvas.geometry = core::CanvasGeometry::beside(canvas.size);
    canvas.geometry.cellPitch = pitch;
    canvas.geometry.gridCentre = origin;
    canvas.geometry.swatchCentre = {side * 40 + 900, 30};
    return canvas;
}

/// The toolkit as it really is, with the palette bar where the profile has it.
tests::VirtualScreen toolkit(const core::Canvas& guess, int pitch, core::Point origin) {
    tests::ScreenSetup setup;
    setup.width = 32000;
    setup.height = 32000;
    setup.columns = guess.size.width;
    setup.rows = guess.size.height;
    setup.gridLeft = origin.x - pitch / 2;
    setup.gridTop = origin.y - pitch / 2;
    setup.cellSide = pitch;
    setup.barLeft = guess.geometry.swatchCentre.x - guess.geometry.swatchPitch / 2;
    setup.barTop = guess.geometry.swatchCentre.y - guess.geometry.swatchPitch / 2;
    setup.swatchSide = guess.geometry.swatchPitch;
    setup.colours = 1;
    return {setup, 0, 0};
}

void drawOn(tests::VirtualScreen& screen, const board::LoadSlot& slot,
            const core::PointerTiming& timing) {
    std::int64_t now = 0;
    core::Point way = slot.canvas.geometry.gridCentre;
    while (way != core::Point{0, 0}) {
        const core::Point step = {std::min(way.x, 127), std::min(way.y, 127)};
        screen.take({now, 0, step.x, step.y});
        now += timing.reportIntervalMs;
        way = {way.x - step.x, way.y - step.y};
    }
    for (const drawing::Report& report : drawing::reportsOf(slot.plan, slot.canvas, timing)) {
        screen.take({now, report.pressed ? 1 : 0, report.dx, report.dy});
        now += report.milliseconds;
    }
    screen.wait(now);
}

/// What a person sees: the first and the last painted cell, and the first touching ticks of the row
/// and the column that hold most of them.
board::CalibrationReading readOff(const tests::VirtualScreen& screen, core::Size size) {
    const auto painted = [&](int x, int y) {
        return screen.cells()[static_cast<std::size_t>(y * size.width + x)] >= 0;
    };
    board::CalibrationReading reading;
    std::vector<int> inRow(static_cast<std::size_t>(size.height));
    std::vector<int> inColumn(static_cast<std::size_t>(size.width));
    bool first = true;
    for (int y = 0; y < size.height; ++y) {
        for (int x = 0; x < size.width; ++x) {
            if (!painted(x, y)) continue;
            if (first) reading.near = {x, y};
            first = false;
            reading.far = {x, y};
            ++inRow[static_cast<std::size_t>(y)];
            ++inColumn[static_cast<std::size_t>(x)];
        }
    }
    const auto row = static_cast<int>(std::max_element(inRow.begin(), inRow.end()) - inRow.begin());
    const auto column =
        static_cast<int>(std::max_element(inColumn.begin(), inColumn.end()) - inColumn.begin());
    for (int x = 1; x < size.width && !reading.pairColumn; ++x) {
        if (painted(x - 1, row) && painted(x, row)) reading.pairColumn = x;
    }
    for (int y = 1; y < size.height && !reading.pairRow; ++y) {
        if (painted(column, y - 1) && painted(column, y)) reading.pairRow = y;
    }
    return reading;
}

core::Result<board::Calibrated> calibrateOnce(const core::Canvas& guess, int pitch,
                                              core::Point origin) {
    const core::PointerTiming timing = core::PointerTiming::quick();
    const auto slot = board::calibrationSlot(guess, timing);
    EXPECT_THAT(slot, isOk());
    tests::VirtualScreen screen = toolkit(guess, pitch, origin);
    drawOn(screen, *slot, timing);
    for (const std::string& fault : screen.faults()) {
        EXPECT_EQ(fault.find("a click beside"), std::string::npos) << fault;
    }
    return board::calibratedFrom(guess, readOff(screen, guess.size));
}

TEST(Calibration, IsALoadThatDrawsWhatItShould) {
    for (const int pitch : {1, 2, 9}) {
        const core::Canvas canvas = guessed(32, pitch, {40, 50});
        const core::PointerTiming timing = core::PointerTiming::careful();
        const auto slot = board::calibrationSlot(canvas, timing);
        ASSERT_THAT(slot, isOk());
        const auto bytes = board::writeLoad({"Calibration", timing, {*slot}}, tests::roomyBoard());
        ASSERT_THAT(bytes, isOk());
        const auto verified = board::verifyLoad(*bytes);
        ASSERT_THAT(verified, isOk());
        EXPECT_TRUE(verified->verified()) << verified->slots[0].fault;
    }
}

TEST(Calibration, FindsPitchAndOriginFromAGuessInTwoDrawings) {
    tests::Random random(31);
    for (int round = 0; round < 60; ++round) {
        const int pitch = random.between(5, 24);
        const core::Point origin = {random.between(20, 300), random.between(20, 300)};
        // A person comes within a fifth of the pitch and a cell and a half of the origin.
        const int off = random.between(-pitch / 5, pitch / 5);
        const core::Point moved = {origin.x + random.between(-3 * pitch / 2, 3 * pitch / 2),
                                   origin.y + random.between(-3 * pitch / 2, 3 * pitch / 2)};
        core::Canvas canvas =
            guessed(64, pitch + off, {std::max(0, moved.x), std::max(0, moved.y)});
        const std::string trace = "pitch " + std::to_string(pitch) + ", guessed " +
                                  std::to_string(pitch + off) + ", origin " +
                                  std::to_string(origin.x) + "," + std::to_string(origin.y);

        const auto rough = calibrateOnce(canvas, pitch, origin);
        ASSERT_THAT(rough, isOk()) << trace;
        EXPECT_LE(rough->leastPitch, pitch) << trace;
        EXPECT_GE(rough->mostPitch, pitch) << trace;
        canvas.geometry.cellPitch = rough->cellPitch;
        canvas.geometry.gridCentre = rough->gridCentre;

        const auto fine = calibrateOnce(canvas, pitch, origin);
        ASSERT_THAT(fine, isOk()) << trace;
        EXPECT_EQ(fine->cellPitch, pitch) << trace;
        EXPECT_LE(std::abs(fine->gridCentre.x - origin.x), 1 + pitch / 12) << trace;
        EXPECT_LE(std::abs(fine->gridCentre.y - origin.y), 1 + pitch / 12) << trace;
        EXPECT_LE(std::abs(fine->gridCentre.x - origin.x), fine->unsure.x + 1) << trace;
        EXPECT_LE(std::abs(fine->gridCentre.y - origin.y), fine->unsure.y + 1) << trace;
    }
}

TEST(Calibration, ForetellsWhatAPersonSees) {
    tests::Random random(17);
    for (int round = 0; round < 40; ++round) {
        const int pitch = random.between(5, 24);
        const core::Point origin = {random.between(40, 300), random.between(40, 300)};
        const core::Canvas canvas = guessed(
            64, pitch + random.between(-1, 1),
            {origin.x + random.between(-pitch, pitch), origin.y + random.between(-pitch, pitch)});
        const core::PointerTiming timing = core::PointerTiming::quick();
        tests::VirtualScreen screen = toolkit(canvas, pitch, origin);
        drawOn(screen, *board::calibrationSlot(canvas, timing), timing);
        const board::CalibrationReading read = readOff(screen, canvas.size);
        const auto sight = board::calibrationOn(canvas, pitch, origin);
        ASSERT_THAT(sight, isOk());
        for (const core::Point cell : sight->cells) {
            EXPECT_GE(screen.cells()[static_cast<std::size_t>(cell.y * 64 + cell.x)], 0);
        }
        const auto painted = std::count_if(screen.cells().begin(), screen.cells().end(),
                                           [](int cell) { return cell >= 0; });
        auto cells = sight->cells;
        std::sort(cells.begin(), cells.end());
        cells.erase(std::unique(cells.begin(), cells.end()), cells.end());
        EXPECT_EQ(static_cast<std::ptrdiff_t>(cells.size()), painted);
        EXPECT_EQ(sight->reading.near, read.near);
        EXPECT_EQ(sight->reading.far, read.far);
        EXPECT_EQ(sight->reading.pairColumn, read.pairColumn);
        EXPECT_EQ(sight->reading.pairRow, read.pairRow);
    }
    EXPECT_THAT(board::calibrationOn(guessed(64, 8, {40, 50}), 0, {40, 50}),
                failsWith(ErrorKind::InvalidInput, "pitch"));
    EXPECT_THAT(board::calibrationOn(guessed(15, 8, {40, 50}), 8, {40, 50}),
                failsWith(ErrorKind::InvalidInput, "too small"));
}

TEST(Calibration, SaysSoIfNothingExplainsTheCells) {
    const core::Canvas canvas = guessed(64, 8, {40, 50});
    // Across the marks lie further apart than down: no square cells do that.
    EXPECT_THAT(board::calibratedFrom(canvas, {{2, 2}, {50, 30}, {}, {}}),
                failsWith(ErrorKind::InvalidInput, "no pitch and origin"));
}

TEST(Calibration, RefusesCellsThatCannotBe) {
    const core::Canvas canvas = guessed(64, 8, {40, 50});
    EXPECT_THAT(board::calibratedFrom(canvas, {{2, 2}, {64, 40}, {}, {}}),
                failsWith(ErrorKind::InvalidInput, "no cell 64"));
    EXPECT_THAT(board::calibratedFrom(canvas, {{2, 2}, {40, 40}, -1, {}}),
                failsWith(ErrorKind::InvalidInput, "no cell -1"));
    EXPECT_THAT(board::calibratedFrom(canvas, {{40, 40}, {2, 2}, {}, {}}),
                failsWith(ErrorKind::InvalidInput, "far mark"));
    EXPECT_THAT(board::calibrationSlot(guessed(15, 8, {40, 50}), core::PointerTiming::quick()),
                failsWith(ErrorKind::InvalidInput, "too small"));
}

}  // namespace
}  // namespace pantile
