#pragma once

// Loads, the trigger of somebody who draws their slots one after the other, and what the benches
// say about it: the same for the player in this program, on other instruction sets and in the
// emulated 8-bit board.

#include <algorithm>
#include <cstdint>
#include <cstdlib>
#include <filesystem>
#include <sstream>
#include <string>
#include <vector>

#include <gtest/gtest.h>

#include "board/load.h"
#include "board/load_layout.h"
#include "drawing/planner.h"
#include "image_files/read_image.h"
#include "picture/exact_indexed.h"
#include "player/slot_choice.h"
#include "player/virtual_screen.h"

namespace pantile::tests {

/// A sample by its place below sample_library/textures.
inline picture::Converted sampleTexture(const std::string& place) {
    const auto file =
        std::filesystem::path(PANTILE_SOURCE_DIR) / "sample_library" / "textures" / place;
    const auto picture = image_files::readImageFile(file);
    auto kept = picture ? picture::keptIndexed(*picture) : std::nullopt;
    EXPECT_TRUE(kept.has_value()) << file;
    return kept ? *std::move(kept)
                : picture::Converted{*core::Grid::filled(1, 1, 0),
                                     *core::Palette::create({{0, 0, 0}, {9, 9, 9}})};
}

/// A first plan for each, without search: what is drawn matters here, not how quickly.
inline board::Load loadOf(const std::vector<picture::Converted>& textures,
                          const core::PointerTiming& timing, core::PenModel pen) {
    board::Load load{"Tidewrack samples", timing, {}};
    for (const picture::Converted& texture : textures) {
        core::Canvas canvas;
        canvas.name = "canvas";
        canvas.size = texture.grid.size();
        canvas.freeColours = texture.palette.size();
        canvas.penModel = pen;
        canvas.geometry = core::CanvasGeometry::beside(canvas.size);
        auto plan = drawing::planDrawing(
            {texture.grid, texture.palette.transparent(), canvas, timing}, {}, {.triesPerCell = 0});
        EXPECT_TRUE(plan.has_value());
        if (!plan) continue;
        load.slots.push_back({"Slot " + std::to_string(load.slots.size() + 1), texture.grid,
                              texture.palette, canvas, *std::move(plan)});
    }
    return load;
}

/// How long a drawing takes until the pen is at cell (0, 0): the corner and the way from there.
inline std::int64_t movingInReports(const board::LoadSlot& slot,
                                    const core::PointerTiming& timing) {
    const int step = timing.maxStepUp;
    const auto reports = [&](int counts) { return (counts + step - 1) / step; };
    const core::Point origin = slot.canvas.geometry.gridCentre;
    return reports(board::layout::kCornerCounts) + reports(std::max(origin.x, origin.y));
}

/// Somebody at the trigger: long presses draw, short ones go on to the next slot.
struct TriggerHand {
    std::vector<std::uint32_t> changes;     ///< Milliseconds at which the trigger changes; up at 0.
    std::vector<std::int64_t> drawsSlotAt;  ///< When slot i's drawing is asked for, and the end.
};

inline TriggerHand drawEverySlot(const board::Load& load) {
    // Arming begins once a short press counts as ended.
    constexpr std::uint32_t kUp = LOAD_PLAYER_ARMING_MS + LOAD_PLAYER_DEBOUNCE_MS + 20;
    TriggerHand hand;
    std::uint32_t now = 0;
    const auto after = [&](std::int64_t milliseconds) {
        now += static_cast<std::uint32_t>(milliseconds);
        hand.changes.push_back(now);
    };
    for (const board::LoadSlot& slot : load.slots) {
        if (!hand.drawsSlotAt.empty()) {
            after(kUp);
            after(150);
        }
        after(kUp);
        hand.drawsSlotAt.push_back(now);
        after(SLOT_CHOICE_LONG_MS + 20);
        now += static_cast<std::uint32_t>(movingInReports(slot, load.timing) *
                                              load.timing.reportIntervalMs +
                                          slot.plan.milliseconds + 100);
    }
    after(kUp);
    hand.drawsSlotAt.push_back(now);
    return hand;
}

struct BenchRun {
    std::vector<SeenReport> reports;
    int mostCycles = 0;
    int stackBytes = 0;
};

/// The lines of eight_bit_bench.c and bare_bench.c, whatever stands around them.
inline BenchRun readBenchLines(const std::string& text) {
    BenchRun run;
    std::istringstream lines(text);
    for (std::string line; std::getline(lines, line);) {
        unsigned time = 0;
        unsigned report = 0;
        unsigned cycles = 0;
        // The emulator colours its lines: each begins after an 'm'.
        const std::size_t start = line.rfind('m') == std::string::npos ? 0 : line.rfind('m') + 1;
        if (std::sscanf(line.c_str() + start, "end %x", &cycles) == 1) {
            run.stackBytes = static_cast<int>(cycles);
        } else if (std::sscanf(line.c_str() + start, "%8x %6x %4x", &time, &report, &cycles) == 3) {
            run.reports.push_back({time, static_cast<int>(report >> 16U),
                                   static_cast<std::int8_t>(report >> 8U),
                                   static_cast<std::int8_t>(report)});
            run.mostCycles = std::max(run.mostCycles, static_cast<int>(cycles));
        }
    }
    return run;
}

/// A toolkit that is only just slow enough for what the board promises.
inline ScreenSetup screenFor(const board::LoadSlot& slot, const core::PointerTiming& timing) {
    const core::CanvasGeometry& g = slot.canvas.geometry;
    ScreenSetup setup;
    setup.columns = slot.canvas.size.width;
    setup.rows = slot.canvas.size.height;
    setup.gridLeft = g.gridCentre.x - g.cellPitch / 2;
    setup.gridTop = g.gridCentre.y - g.cellPitch / 2;
    setup.cellSide = g.cellPitch;
    setup.barLeft = g.swatchCentre.x - g.swatchPitch / 2;
    setup.barTop = g.swatchCentre.y - g.swatchPitch / 2;
    setup.swatchSide = g.swatchPitch;
    setup.swatchesPerColumn = g.swatchesPerColumn;
    setup.colours = slot.palette.size();
    setup.pen = static_cast<ScreenPen>(slot.canvas.penModel);
    setup.leastPressMs = timing.pressMs;
    setup.leastReleaseMs = timing.releaseMs;
    setup.leastSettleMs = timing.settleMs;
    setup.leastGapMs = timing.reportIntervalMs;
    setup.longestStepUp = timing.maxStepUp;
    setup.longestStepDown = timing.maxStepDown;
    return setup;
}

/// Empty if the screen ends with exactly the slot's texture and had nothing to complain of.
inline std::string whatIsWrong(const VirtualScreen& screen, const board::LoadSlot& slot) {
    if (!screen.faults().empty()) return screen.faults().front();
    if (screen.buttonDown()) return "the button is still down";
    for (int y = 0; y < slot.canvas.size.height; ++y) {
        for (int x = 0; x < slot.canvas.size.width; ++x) {
            int wanted = slot.grid.contains({x, y}) ? slot.grid.at(x, y) : -1;
            if (wanted == slot.palette.transparent()) wanted = -1;
            const int shown =
                screen.cells()[static_cast<std::size_t>(y * slot.canvas.size.width + x)];
            if (shown != wanted) {
                return "cell " + std::to_string(x) + "," + std::to_string(y) + " shows " +
                       std::to_string(shown) + " in place of " + std::to_string(wanted);
            }
        }
    }
    return {};
}

/// The reports of each drawing, in order.
inline std::vector<std::vector<SeenReport>> drawings(const std::vector<SeenReport>& reports,
                                                     const TriggerHand& hand) {
    std::vector<std::vector<SeenReport>> parts(hand.drawsSlotAt.size() - 1);
    for (const SeenReport& report : reports) {
        std::size_t part = 0;
        while (part + 1 < parts.size() && report.at >= hand.drawsSlotAt[part + 1]) ++part;
        parts[part].push_back(report);
    }
    return parts;
}

/// From the pen's start at cell (0, 0) to the end of the last release's wait.
inline std::int64_t drawingTime(const std::vector<SeenReport>& reports, const board::LoadSlot& slot,
                                const core::PointerTiming& timing) {
    const auto start = static_cast<std::size_t>(movingInReports(slot, timing));
    if (reports.size() <= start) return 0;
    return reports.back().at + timing.releaseMs - reports[start].at;
}

/// Every slot has to be drawn, exactly and in the foretold time.
inline void expectDrawsEverySlot(const BenchRun& run, const board::Load& load,
                                 const TriggerHand& hand) {
    const auto parts = drawings(run.reports, hand);
    ASSERT_EQ(parts.size(), load.slots.size());
    for (std::size_t i = 0; i < parts.size(); ++i) {
        const board::LoadSlot& slot = load.slots[i];
        ASSERT_FALSE(parts[i].empty()) << slot.title;
        VirtualScreen screen(screenFor(slot, load.timing), 700, 500);
        for (const SeenReport& report : parts[i]) screen.take(report);
        screen.wait(hand.drawsSlotAt[i + 1]);
        EXPECT_EQ(whatIsWrong(screen, slot), "") << slot.title;
        EXPECT_GE(parts[i].front().at, hand.drawsSlotAt[i] + SLOT_CHOICE_LONG_MS - 1) << slot.title;
        const double foretold = static_cast<double>(slot.plan.milliseconds);
        EXPECT_NEAR(static_cast<double>(drawingTime(parts[i], slot, load.timing)), foretold,
                    foretold / 100)
            << slot.title;
    }
}

}  // namespace pantile::tests
