#include "drawing/reports.h"

#include <cstdlib>
#include <numeric>

#include <gmock/gmock.h>

#include "drawing/planner.h"
#include "drawing/requests.h"
#include "drawing/timing.h"

namespace pantile::drawing {
namespace {

using testing::ElementsAre;
using testing::ElementsAreArray;

/// The steps of one way of `distance` counts to a swatch that lies so far off on one axis.
std::vector<int> stepsToSwatch(int distance) {
    core::Canvas canvas = tests::canvasFor({1, 1}, 2);
    canvas.geometry.gridCentre = {2000, 100};
    canvas.geometry.swatchCentre = {2000 + distance, 100};
    const Plan plan = timedPlan({Stroke{0, {{0, 0}}}}, TimeModel(canvas, {}));
    std::vector<int> steps;
    for (const Report& report : reportsOf(plan, canvas, {})) {
        if (report.pressed) break;
        EXPECT_EQ(report.dy, 0);
        steps.push_back(report.dx);
    }
    return steps;
}

// Source: USB HID 1.11 appendix B.2 (logical range -127..127); the splits are this project's own,
// ceil(|d| / 127) reports, full steps and a rest.
TEST(Reports, SplitsWaysIntoFullStepsAndARest) {
    EXPECT_THAT(stepsToSwatch(0), ElementsAre());
    EXPECT_THAT(stepsToSwatch(1), ElementsAre(1));
    EXPECT_THAT(stepsToSwatch(127), ElementsAre(127));
    EXPECT_THAT(stepsToSwatch(128), ElementsAre(127, 1));
    EXPECT_THAT(stepsToSwatch(-127), ElementsAre(-127));
    EXPECT_THAT(stepsToSwatch(-128), ElementsAre(-127, -1));
    EXPECT_THAT(stepsToSwatch(254), ElementsAre(127, 127));
    EXPECT_THAT(stepsToSwatch(255), ElementsAre(127, 127, 1));
    EXPECT_THAT(stepsToSwatch(300), ElementsAre(127, 127, 46));
    EXPECT_THAT(stepsToSwatch(1000), ElementsAre(127, 127, 127, 127, 127, 127, 127, 111));
}

TEST(Reports, AreForOneStrokeAsByHand) {
    const DrawingRequest request = tests::requestFor({"00"});
    const Plan plan = planRowByRow(request);
    // From (4, 4) to swatch 0 at (48, 8), click, settle, back, press, one cell right, release.
    const std::vector<Report> wanted{{44, 4, false, 8},  {0, 0, true, 33},    {0, 0, false, 33},
                                     {0, 0, false, 100}, {-44, -4, false, 8}, {0, 0, true, 33},
                                     {8, 0, true, 8},    {0, 0, false, 33}};
    EXPECT_THAT(reportsOf(plan, request.canvas, request.timing), ElementsAreArray(wanted));
}

TEST(Reports, LastAsLongAsThePlanForetells) {
    for (std::uint64_t seed = 0; seed < 200; ++seed) {
        const DrawingRequest request = tests::randomRequest(seed);
        const Plan plan = planRowByRow(request);
        const auto reports = reportsOf(plan, request.canvas, request.timing);
        const auto total = std::accumulate(
            reports.begin(), reports.end(), std::int64_t{0},
            [](std::int64_t sum, const Report& report) { return sum + report.milliseconds; });
        ASSERT_EQ(total, plan.milliseconds) << tests::described(seed, request);
    }
}

TEST(Reports, NeverMoveAndChangeTheButtonAtOnceNorLeaveTheRange) {
    for (std::uint64_t seed = 0; seed < 200; ++seed) {
        const DrawingRequest request = tests::randomRequest(seed);
        bool pressed = false;
        for (const Report& report :
             reportsOf(planRowByRow(request), request.canvas, request.timing)) {
            const bool moves = report.dx != 0 || report.dy != 0;
            ASSERT_FALSE(moves && report.pressed != pressed) << tests::described(seed, request);
            ASSERT_GE(report.dx, -127);
            ASSERT_GE(report.dy, -127);
            pressed = report.pressed;
        }
        ASSERT_FALSE(pressed);
    }
}

/// Seen from the reports alone: where the pen lands, cell by cell, while the button is down.
TEST(Reports, LandInEveryCellOfASampledStroke) {
    for (const int step : {1, 3, 5, 8, 100}) {
        core::PointerTiming timing;
        timing.maxStepDown = step;
        const DrawingRequest request =
            tests::requestFor({"0000000000"}, core::PenModel::Sampled, timing);
        std::vector<bool> landed(10);
        int x = 4;
        for (const Report& report :
             reportsOf(planRowByRow(request), request.canvas, request.timing)) {
            x += report.dx;
            if (report.pressed && x < 80) landed[static_cast<std::size_t>(x / 8)] = true;
        }
        EXPECT_EQ(landed, std::vector<bool>(10, true)) << "step " << step;
    }
}

}  // namespace
}  // namespace pantile::drawing
