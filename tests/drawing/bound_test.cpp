// lowerBoundMs against hand-worked values, and against plans the planner does not make: strokes
// that turn, run over later colours, jump, and come back to a colour.

#include <algorithm>

#include <gtest/gtest.h>

#include "drawing/planner.h"
#include "drawing/replay.h"
#include "drawing/requests.h"
#include "drawing/timing.h"
#include "support/matchers.h"

namespace pantile::drawing {
namespace {

using core::PenModel;
using tests::isOk;

TEST(LowerBound, IsReachedByTwoSingleCells) {
    const DrawingRequest request = tests::requestFor({"01"});
    EXPECT_EQ(lowerBoundMs(request), 496);
    EXPECT_EQ(planDrawing(request).value().milliseconds, 496);
}

TEST(LowerBound, IsAsWorkedOutByHandForASquare) {
    // 9 cells in one drag: 66 + 8 x 8 = 130. Swatch (56, 8): every way 8, so 8 + 166 + 8.
    EXPECT_EQ(lowerBoundMs(tests::requestFor({"000", "000", "000"})), 130 + 182);
}

TEST(LowerBound, CountsTheWayFromTheStart) {
    // The start is 156 counts from swatch (160, 8): 16 ms; cell 15 only 36: 8 ms there.
    EXPECT_EQ(lowerBoundMs(tests::requestFor({"0000000000000000"})), 16 + 166 + 8 + 66 + 15 * 8);
}

TEST(LowerBound, AllowsClicksWhereDragsAreDearer) {
    core::PointerTiming timing;
    timing.maxStepDown = 1;
    timing.pressMs = 1;
    timing.releaseMs = 1;
    // Each further cell: drag 8 x 8 = 64, or lift, go and press 8 + 2. Pick 8 + 102, back 8.
    EXPECT_EQ(lowerBoundMs(tests::requestFor({"000"}, PenModel::WholeCells, timing)),
              110 + 8 + 3 * 2 + 2 * 8);
}

TEST(LowerBound, CountsLongStepsOfTheLinesPen) {
    core::PointerTiming timing;
    timing.maxStepDown = 24;
    // 4 cells are 3 x 8 = 24 counts apart: one report. Swatch (64, 8), ways of 8.
    EXPECT_EQ(lowerBoundMs(tests::requestFor({"0000"}, PenModel::Lines, timing)), 182 + 66 + 8);
}

/// A snake over the whole square is what the bound allows for.
TEST(LowerBound, IsReachedByASnake) {
    const DrawingRequest request = tests::requestFor({"000", "000", "000"});
    const Stroke snake{0, {{0, 0}, {2, 0}, {2, 1}, {0, 1}, {0, 2}, {2, 2}}};
    const Plan plan = timedPlan({snake}, TimeModel(request.canvas, request.timing));
    ASSERT_THAT(provePlan(plan, request), isOk());
    EXPECT_EQ(plan.milliseconds, lowerBoundMs(request));
}

/// Short aslant steps may end in a third cell on their way, so that a drag paints more cells than
/// its length says.
TEST(LowerBound, HoldsWhereAslantStepsTouchAThirdCell) {
    core::PointerTiming timing;
    timing.maxStepDown = 4;
    for (const PenModel pen : {PenModel::Diagonals, PenModel::Sampled}) {
        const DrawingRequest request = tests::requestFor({"00", "00"}, pen, timing);
        const Stroke aslant{0, {{0, 1}, {1, 0}, {0, 0}}};
        const Plan plan = timedPlan({aslant}, TimeModel(request.canvas, request.timing));
        ASSERT_THAT(provePlan(plan, request), isOk());
        EXPECT_LE(lowerBoundMs(request), plan.milliseconds);
    }
}

/// A full snake over all cells in the first colour, then every other cell by random strokes of its
/// colour in random order, with returns to colours already left.
Plan wildPlan(tests::Random& random, const DrawingRequest& request) {
    const core::Grid& grid = request.grid;
    std::vector<Stroke> strokes;
    Stroke snake{grid.at(0, 0), {}};
    for (int y = 0; y < grid.height(); ++y) {
        const core::Point left{0, y};
        const core::Point right{grid.width() - 1, y};
        snake.path.push_back(y % 2 == 0 ? left : right);
        if (grid.width() > 1) snake.path.push_back(y % 2 == 0 ? right : left);
    }
    std::vector<core::Point> cells;
    for (int y = 0; y < grid.height(); ++y) {
        for (int x = 0; x < grid.width(); ++x) {
            if (grid.at(x, y) != snake.colour) cells.push_back({x, y});
        }
    }
    for (std::size_t i = cells.size(); i > 1; --i) {
        std::swap(cells[i - 1],
                  cells[static_cast<std::size_t>(random.between(0, static_cast<int>(i) - 1))]);
    }
    std::stable_sort(cells.begin(), cells.end(),
                     [&](core::Point a, core::Point b) { return grid.at(a) / 2 < grid.at(b) / 2; });
    strokes.push_back(std::move(snake));
    for (const core::Point cell : cells) strokes.push_back({grid.at(cell), {cell}});
    return timedPlan(std::move(strokes), TimeModel(request.canvas, request.timing));
}

/// The wild plan again with everything filled first, in a colour that is painted or in another one;
/// cells of the filled colour are left out.
TEST(LowerBound, HoldsForPlansThatFill) {
    for (std::uint64_t seed = 0; seed < 300; ++seed) {
        DrawingRequest request = tests::randomRequest(seed, 5);
        request.leaveUnpainted.reset();
        request.canvas.size = request.grid.size();
        core::CanvasGeometry& g = request.canvas.geometry;
        g.fillButton = core::Point{g.gridCentre.x + 6000, g.gridCentre.y + 40};
        tests::Random random(seed);
        const auto colour =
            static_cast<core::PaletteIndex>(random.between(0, request.canvas.freeColours - 1));
        std::vector<Stroke> strokes;
        for (int y = 0; y < request.grid.height(); ++y) {
            for (int x = 0; x < request.grid.width(); ++x) {
                if (request.grid.at(x, y) == colour) continue;
                strokes.push_back({request.grid.at(x, y), {{x, y}}});
            }
        }
        std::stable_sort(strokes.begin(), strokes.end(),
                         [](const Stroke& a, const Stroke& b) { return a.colour < b.colour; });
        const Plan plan =
            timedPlan(std::move(strokes), TimeModel(request.canvas, request.timing), colour);
        ASSERT_THAT(provePlan(plan, request), isOk()) << tests::described(seed, request);
        ASSERT_LE(lowerBoundMs(request), plan.milliseconds) << tests::described(seed, request);
    }
}

/// 40 cells, 39 of them filled: every way is one report of 8 ms.
TEST(LowerBound, CountsAFillAsWorkedOutByHand) {
    DrawingRequest request =
        tests::requestFor({"00000000", "00000000", "00010000", "00000000", "00000000"});
    request.canvas.geometry.fillButton = core::Point{96, 60};
    // To swatch 0 and on to the button, two clicks of 66 + 100; then to swatch 1, its pick, to the
    // cell and its click.
    EXPECT_EQ(lowerBoundMs(request), 8 + 8 + 2 * 166 + 8 + 166 + 8 + 66);
    // Drawn: 38 x 8 of drags, two picks and clicks, and the ways to and fro.
    request.canvas.geometry.fillButton.reset();
    EXPECT_EQ(lowerBoundMs(request), 38 * 8 + 2 * (166 + 66) + 4 * 8);
}

TEST(LowerBound, HoldsForPlansThatTurnOverpaintAndReturn) {
    for (std::uint64_t seed = 0; seed < 500; ++seed) {
        DrawingRequest request = tests::randomRequest(seed, 6);
        request.leaveUnpainted.reset();
        tests::Random random(seed);
        const Plan plan = wildPlan(random, request);
        ASSERT_THAT(provePlan(plan, request), isOk()) << tests::described(seed, request);
        ASSERT_LE(lowerBoundMs(request), plan.milliseconds) << tests::described(seed, request);
    }
}

}  // namespace
}  // namespace pantile::drawing
