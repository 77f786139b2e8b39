// The judge itself: a toolkit a little slower than the board believes has to spoil the drawing.

#include "player/virtual_screen.h"

#include <gtest/gtest.h>

#include "drawing/reports.h"
#include "player/bench_run.h"
#include "support/random.h"

namespace pantile::tests {
namespace {

board::Load oneSample() {
    return loadOf({sampleTexture("16/whelk-shell.png")}, core::PointerTiming::careful(),
                  core::PenModel::WholeCells);
}

// From the corner, as the player does; the reports themselves come from the plan.
std::vector<SeenReport> reportsFor(const board::Load& load) {
    const board::LoadSlot& slot = load.slots[0];
    std::vector<SeenReport> seen;
    std::int64_t now = 0;
    const auto move = [&](int dx, int dy) {
        seen.push_back({now, 0, dx, dy});
        now += load.timing.reportIntervalMs;
    };
    for (int i = 0; i < 20; ++i) move(-127, -127);
    move(slot.canvas.geometry.gridCentre.x, slot.canvas.geometry.gridCentre.y);
    for (const auto& report : drawing::reportsOf(slot.plan, slot.canvas, load.timing)) {
        seen.push_back({now, report.pressed ? 1 : 0, report.dx, report.dy});
        now += report.milliseconds;
    }
    return seen;
}

std::string wrongOn(const ScreenSetup& setup, const std::vector<SeenReport>& reports,
                    const board::LoadSlot& slot) {
    VirtualScreen screen(setup, 900, 700);
    for (const SeenReport& report : reports) screen.take(report);
    screen.wait(reports.back().at + 10'000);
    return whatIsWrong(screen, slot);
}

TEST(VirtualScreen, ShowsTheTextureOnAToolkitThatIsQuickEnough) {
    const board::Load load = oneSample();
    EXPECT_EQ(wrongOn(screenFor(load.slots[0], load.timing), reportsFor(load), load.slots[0]), "");
}

TEST(VirtualScreen, IsSpoiltByEveryLimitThatIsMissed) {
    const board::Load load = oneSample();
    const std::vector<SeenReport> reports = reportsFor(load);
    const ScreenSetup good = screenFor(load.slots[0], load.timing);
    std::vector<std::pair<std::string, ScreenSetup>> setups(9, {"", good});
    setups[0] = {"press", good};
    setups[0].second.leastPressMs += 1;
    setups[1] = {"release", good};
    setups[1].second.leastReleaseMs += 1;
    setups[2] = {"settle", good};
    setups[2].second.leastSettleMs += 1;
    setups[3] = {"gap", good};
    setups[3].second.leastGapMs += 1;
    setups[4] = {"step up", good};
    setups[4].second.longestStepUp -= 1;
    setups[5] = {"step down", good};
    setups[5].second.longestStepDown -= 1;
    setups[6] = {"grid", good};
    setups[6].second.gridLeft += good.cellSide;
    setups[7] = {"pitch", good};
    setups[7].second.cellSide += 1;
    setups[8] = {"bar", good};
    setups[8].second.barTop += good.swatchSide;
    for (const auto& [what, setup] : setups) {
        EXPECT_NE(wrongOn(setup, reports, load.slots[0]), "") << what;
    }
}

TEST(VirtualScreen, IsSpoiltByOneReportLost) {
    const board::Load load = oneSample();
    const std::vector<SeenReport> reports = reportsFor(load);
    Random random(11);
    for (int round = 0; round < 40; ++round) {
        std::vector<SeenReport> fewer = reports;
        const int at = random.between(21, static_cast<int>(reports.size()) - 2);
        const SeenReport lost = fewer[static_cast<std::size_t>(at)];
        if (lost.dx == 0 && lost.dy == 0) continue;
        fewer.erase(fewer.begin() + at);
        EXPECT_NE(wrongOn(screenFor(load.slots[0], load.timing), fewer, load.slots[0]), "")
            << "report " << at;
    }
}

TEST(VirtualScreen, EndsAtItsEdges) {
    ScreenSetup setup;
    setup.width = 200;
    setup.height = 100;
    setup.columns = 4;
    setup.rows = 4;
    setup.cellSide = 10;
    setup.barLeft = 60;
    setup.swatchSide = 10;
    setup.colours = 1;
    VirtualScreen screen(setup, 199, 99);
    screen.take({0, 0, 50, 50});
    for (int i = 1; i < 4; ++i) screen.take({i, 0, -100, -100});
    screen.take({10, 0, 65, 5});
    screen.take({11, 1, 0, 0});
    screen.take({12, 0, 0, 0});
    screen.take({13, 0, -65, 0});
    screen.take({14, 1, 0, 0});
    screen.take({15, 0, 0, 0});
    screen.wait(16);
    EXPECT_TRUE(screen.faults().empty());
    EXPECT_EQ(screen.cells()[0], 0);
}

}  // namespace
}  // namespace pantile::tests
