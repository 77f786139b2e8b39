#include "drawing/row_runs.h"

#include <gtest/gtest.h>

#include "drawing/planner.h"
#include "drawing/replay.h"
#include "drawing/requests.h"
#include "support/matchers.h"

namespace pantile::drawing {
namespace {

using core::Point;

TimeModel modelFor(core::Size size) {
    return {tests::canvasFor(size, 16, core::PenModel::WholeCells), core::PointerTiming::careful()};
}

TEST(RowRuns, VisitsEndWhereTheColourChanges) {
    const std::vector<Stroke> strokes = {
        {1, {{0, 0}}}, {1, {{2, 0}}}, {2, {{1, 0}}}, {1, {{3, 0}}}};
    const auto visits = visitsOf(strokes);
    ASSERT_EQ(visits.size(), 3U);
    EXPECT_EQ(visits[0], (VisitStrokes{strokes[0], strokes[1]}));
    EXPECT_EQ(visits[1], VisitStrokes{strokes[2]});
    EXPECT_EQ(visits[2], VisitStrokes{strokes[3]});
    EXPECT_TRUE(visitsOf({}).empty());
}

TEST(RowRuns, GoOnOverCellsThatAreCoveredLater) {
    // The row 1 1 2 1 - 1 0 1: colour 1 was drawn in one stroke, then 2; 0 was there before.
    const std::vector<VisitStrokes> visits = {
        {{0, {{6, 0}}}}, {{1, {{3, 0}, {0, 0}}}, {1, {{5, 0}}}, {1, {{7, 0}}}}, {{2, {{2, 0}}}}};
    const core::Size grid = {8, 1};
    const auto runs = asRowRuns(visits, grid, modelFor(grid), true);
    EXPECT_EQ(runs[0], visits[0]);
    EXPECT_EQ(runs[1], (VisitStrokes{{1, {{0, 0}, {3, 0}}}, {1, {{5, 0}}}, {1, {{7, 0}}}}));
    EXPECT_EQ(runs[2], visits[2]);
    const auto uncovering = asRowRuns(visits, grid, modelFor(grid), false);
    EXPECT_EQ(uncovering[1].size(), 4U) << "without covering, the run ends before colour 2";
}

TEST(RowRuns, LiftWhereThatIsQuicker) {
    const core::Size grid = {40, 1};
    const TimeModel model = modelFor(grid);
    // A lift takes 33 + 33 + 8 ms, which is the time of 9.25 cells.
    const auto runsOver = [&](int gap) {
        const std::vector<VisitStrokes> visits = {
            {{1, {{0, 0}, {39, 0}}}}, {{2, {{1, 0}, {gap, 0}}}, {2, {{gap + 2, 0}, {39, 0}}}}};
        return asRowRuns(visits, grid, model, true)[0].size();
    };
    EXPECT_EQ(runsOver(8), 1U);
    EXPECT_EQ(runsOver(9), 2U);
}

TEST(RowRuns, LeaveOutWhatIsCoveredEverywhere) {
    const std::vector<VisitStrokes> visits = {{{1, {{0, 0}, {3, 0}}}}, {{2, {{3, 0}, {0, 0}}}}};
    const auto runs = asRowRuns(visits, {4, 1}, modelFor({4, 1}), true);
    EXPECT_TRUE(runs[0].empty());
    EXPECT_EQ(runs[1], (VisitStrokes{{2, {{0, 0}, {3, 0}}}}));
}

TEST(RowRuns, OfAnyPlanPaintTheTexture) {
    for (std::uint64_t seed = 1; seed <= 80; ++seed) {
        DrawingRequest request = tests::randomRequest(seed);
        tests::Random random(seed);
        request.canvas.rules.turns = random.between(0, 2) != 0;
        request.canvas.rules.covers = random.between(0, 2) != 0;
        const Plan plan = planDrawing(request, {}, {.triesPerCell = 0}).value();
        const TimeModel model(request.canvas, request.timing);
        const core::Size size = request.grid.size();
        const auto runs =
            asRowRuns(visitsOf(plan.strokes), size, model, request.canvas.rules.covers);
        std::vector<Stroke> strokes;
        for (const VisitStrokes& visit : runs) {
            int behind = -1;
            for (const Stroke& run : visit) {
                const Point from = run.path.front();
                const Point to = run.path.back();
                EXPECT_GT(from.y * size.width + from.x, behind) << "seed " << seed;
                EXPECT_EQ(from.y, to.y) << "seed " << seed;
                EXPECT_LE(from.x, to.x) << "seed " << seed;
                behind = to.y * size.width + to.x;
                strokes.push_back(run);
            }
        }
        EXPECT_THAT(provePlan(timedPlan(std::move(strokes), model, plan.fill), request),
                    tests::isOk())
            << tests::described(seed, request);
    }
}

TEST(RowRuns, TimeOfAVisitIsThatOfAPlanWithoutPickAndWays) {
    for (std::uint64_t seed = 1; seed <= 50; ++seed) {
        const DrawingRequest request = tests::randomRequest(seed);
        const TimeModel model(request.canvas, request.timing);
        for (const VisitStrokes& visit : visitsOf(planRowByRow(request).strokes)) {
            const core::PaletteIndex colour = visit.front().colour;
            const std::int64_t before =
                model.pickMs(model.start(), colour) +
                model.travelMs(model.swatch(colour), model.cellCentre(visit.front().path.front()));
            EXPECT_EQ(visitMs(visit, model), timedPlan(visit, model).milliseconds - before)
                << "seed " << seed;
        }
    }
}

}  // namespace
}  // namespace pantile::drawing
