// The player on the instruction sets of boards: compiled by their compilers, run by an emulator or
// by the processor itself, and judged by what a virtual screen shows in the end.

#include <fstream>

#include <gtest/gtest.h>

#include "board/load_writer.h"
#include "board/profile.h"
#include "board/texture_variants.h"
#include "drawing/timing.h"
#include "player/bench_run.h"
#include "player/eight_bit.h"
#include "player/memory_load.h"
#include "player/thirty_two_bits.h"
#include "support/matchers.h"

namespace pantile::tests {
namespace {

constexpr int kFlashForPlayer = 6144;
constexpr int kRamForPlayer = 256;
constexpr int kMostCycles = 16000;  ///< Of a millisecond.

std::vector<std::uint8_t> flashBytes(const board::Load& load) {
    auto bytes = board::writeLoad(load, board::shippedBoards()[0]);
    EXPECT_THAT(bytes, isOk());
    return bytes ? *std::move(bytes) : std::vector<std::uint8_t>{};
}

/// Of all slots only the first two are asked for.
TriggerHand drawTwo(const board::Load& load) {
    board::Load two = load;
    two.slots.resize(2, load.slots[0]);
    return drawEverySlot(two);
}

TEST(EightBitBoard, DrawsFromItsFlashWithinItsBudgets) {
    if (!hasEightBitTools()) GTEST_SKIP() << kNoEightBitTools;
    // Three of the samples that take most bytes; the two that are quickest are drawn.
    const board::Load load =
        loadOf({sampleTexture("64/lighthouse.png"), sampleTexture("64/rowing-boat.png"),
                sampleTexture("64/fishing-net.png"), sampleTexture("64/mussel-bed.png"),
                sampleTexture("64/barnacles-on-rock.png")},
               core::PointerTiming::quick(), core::PenModel::WholeCells);
    const TriggerHand hand = drawTwo(load);
    EightBit board;
    const std::vector<std::uint8_t> bytes = flashBytes(load);
    const Outcome built = board.build(bytes, hand, "eight_bit_bench.c", false);
    ASSERT_EQ(built.status, 0) << built.output;
    ASSERT_EQ(board.buildBenchAlone("eight_bit_bench.c").status, 0);
    const BenchRun run = board.play();

    board::Load drawn = load;
    drawn.slots.resize(2, load.slots[0]);
    expectDrawsEverySlot(run, drawn, hand);

    const EightBit::Sizes whole = board.sizes("whole");
    const EightBit::Sizes alone = board.sizes("alone");
    const int code = whole.flash - alone.flash - static_cast<int>(bytes.size());
    const int ram = whole.ram - alone.ram;
    std::cout << "player and port: " << code << " bytes of flash, " << ram << " of RAM and "
              << run.stackBytes << " of stack; at most " << run.mostCycles
              << " cycles for a report\n";
    EXPECT_GT(code, 2000) << "this cannot be all of the player";
    EXPECT_LE(code, kFlashForPlayer);
    EXPECT_LE(static_cast<std::int64_t>(bytes.size()), board::shippedBoards()[0].bytes);
    EXPECT_GT(ram, 60);
    EXPECT_LE(ram + run.stackBytes, kRamForPlayer);
    // A report has to be ready within the shortest interval that a load may ask for.
    EXPECT_GT(run.mostCycles, 100);
    EXPECT_LT(run.mostCycles, kMostCycles);
}

/// A texture for each pen, as it is planned and in the fewest bytes.
board::Load everyPenAndForm() {
    core::PointerTiming timing = core::PointerTiming::quick();
    timing.maxStepDown = 127;
    board::Load load{"Pens", timing, {}};
    for (int pen = 0; pen < 4; ++pen) {
        for (board::LoadSlot slot :
             loadOf({sampleTexture("16/rope-strand.png")}, timing, static_cast<core::PenModel>(pen))
                 .slots) {
            load.slots.push_back(slot);
            slot.plan = board::variantsOf(slot, timing).value().back().plan;
            EXPECT_NE(slot.plan, load.slots.back().plan);
            load.slots.push_back(std::move(slot));
        }
    }
    return load;
}

/// Two cells at opposite ends of the largest grid, as runs: no step of a script takes longer.
board::LoadSlot farApart(const core::PointerTiming& timing) {
    const core::Size size = {256, 256};
    core::Canvas canvas;
    canvas.name = "canvas";
    canvas.size = size;
    canvas.geometry = {{2, 2}, 4, {1040, 8}, 16, 16};
    core::Grid grid = *core::Grid::filled(size.width, size.height, 0);
    std::vector<drawing::Stroke> strokes;
    for (const core::Point cell : {core::Point{0, 0}, core::Point{254, 255}}) {
        grid.set(cell.x, cell.y, 1);
        strokes.push_back({1, {cell}});
    }
    return {"Far apart", std::move(grid),
            *core::Palette::create({{0, 0, 0}, {9, 9, 9}}, core::PaletteIndex{0}), canvas,
            drawing::timedPlan(std::move(strokes), drawing::TimeModel(canvas, timing))};
}

TEST(EightBitBoard, DrawsWithEveryPenInEveryForm) {
    if (!hasEightBitTools()) GTEST_SKIP() << kNoEightBitTools;
    board::Load load = everyPenAndForm();
    load.slots.push_back(farApart(load.timing));
    const TriggerHand hand = drawEverySlot(load);
    EightBit board;
    const Outcome built = board.build(written(load), hand, "eight_bit_bench.c", false);
    ASSERT_EQ(built.status, 0) << built.output;
    ASSERT_EQ(board.buildBenchAlone("eight_bit_bench.c").status, 0);
    const BenchRun run = board.play();
    expectDrawsEverySlot(run, load, hand);
    const int ram = board.sizes("whole").ram - board.sizes("alone").ram;
    std::cout << ram << " bytes of RAM and " << run.stackBytes << " of stack; at most "
              << run.mostCycles << " cycles for a report\n";
    EXPECT_LT(run.mostCycles, kMostCycles);
    EXPECT_LE(ram + run.stackBytes, kRamForPlayer);
}

TEST(EightBitBoard, FollowsItsOwnPinAndClock) {
    if (!hasEightBitTools()) GTEST_SKIP() << kNoEightBitTools;
    board::Load load = loadOf(
        {{*core::Grid::filled(3, 2, 1), *core::Palette::create({{20, 30, 40}, {200, 190, 180}})}},
        core::PointerTiming::quick(), core::PenModel::WholeCells);
    EightBit board;
    const Outcome built = board.build(flashBytes(load), {}, "pins_bench.c", true);
    ASSERT_EQ(built.status, 0) << built.output;
    // The wire of the trigger: high at first, low (which is pressed) from 560 ms to 1200 ms.
    std::ofstream(board.folder() / "wire.vcd")
        << "$timescale 1us $end\n"
           "$scope module wires $end\n"
           "$var wire 1 ! iogB_4 $end\n"
           "$upscope $end\n"
           "$enddefinitions $end\n"
           "#0\n1!\n#560000\n0!\n#1200000\n1!\n#2300000\n1!\n";
    BenchRun run = board.play("-i " + (board.folder() / "wire.vcd").string());
    ASSERT_FALSE(run.reports.empty());
    constexpr double kTicksPerMs = 15.625;
    const auto milliseconds = [&](std::int64_t ticks) {
        return static_cast<double>(ticks) / kTicksPerMs;
    };
    EXPECT_NEAR(milliseconds(run.reports.front().at), 560 + SLOT_CHOICE_LONG_MS, 10);
    const double drew =
        milliseconds(drawingTime(run.reports, load.slots[0], load.timing) - load.timing.releaseMs) +
        load.timing.releaseMs;
    const auto foretold = static_cast<double>(load.slots[0].plan.milliseconds);
    EXPECT_NEAR(drew, foretold, foretold / 100);

    VirtualScreen screen(screenFor(load.slots[0], load.timing), 100, 100);
    for (SeenReport report : run.reports) {
        // What the clock's own step of a millisecond may move a report by is no fault.
        report.at = static_cast<std::int64_t>(milliseconds(report.at) + 0.5);
        screen.take(report);
    }
    screen.wait(5000);
    EXPECT_EQ(whatIsWrong(screen, load.slots[0]), "");
}

TEST(ThirtyTwoBits, DrawEverySlot) {
    const ThirtyTwoBits bench;
    if (!bench.missing().empty()) GTEST_SKIP() << bench.missing();
    const board::Load load =
        loadOf({sampleTexture("16/rope-strand.png"), sampleTexture("32/life-ring.png"),
                sampleTexture("64/mussel-bed.png")},
               core::PointerTiming::careful(), core::PenModel::WholeCells);
    const TriggerHand hand = drawEverySlot(load);
    expectDrawsEverySlot(bench.play(flashBytes(load), hand), load, hand);
}

}  // namespace
}  // namespace pantile::tests
