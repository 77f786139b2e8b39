#include "drawing/timing.h"

#include <gtest/gtest.h>

#include "drawing/requests.h"

namespace pantile::drawing {
namespace {

using core::PenModel;
using tests::canvasFor;

TimeModel modelFor(PenModel pen, core::PointerTiming timing = {}) {
    return TimeModel(canvasFor({16, 16}, 16, pen), timing);
}

TEST(TimeModel, PricesTravelByTheLongerSideInFullSteps) {
    const TimeModel model = modelFor(PenModel::WholeCells);
    EXPECT_EQ(model.travelMs({4, 4}, {4, 4}), 0);
    EXPECT_EQ(model.travelMs({4, 4}, {5, 4}), 8);
    EXPECT_EQ(model.travelMs({0, 0}, {127, 127}), 8);
    EXPECT_EQ(model.travelMs({0, 0}, {127, 128}), 16);
    EXPECT_EQ(model.travelMs({300, 0}, {0, 20}), 24);
}

TEST(TimeModel, PricesADragOfWholeCellsAtOneReportACell) {
    // 15 cells of 8 counts in steps of 8: 15 reports of 8 ms.
    EXPECT_EQ(modelFor(PenModel::WholeCells).dragMs({0, 3}, {15, 3}), 120);
    EXPECT_EQ(modelFor(PenModel::WholeCells).dragMs({3, 15}, {3, 0}), 120);
}

TEST(TimeModel, LetsOnlyTheLinesPenStepOverMoreThanACell) {
    core::PointerTiming timing;
    timing.maxStepDown = 127;
    for (const PenModel pen : {PenModel::WholeCells, PenModel::Diagonals, PenModel::Sampled}) {
        EXPECT_EQ(modelFor(pen, timing).dragMs({0, 0}, {15, 0}), 120);
    }
    // 120 counts fit into one report.
    EXPECT_EQ(modelFor(PenModel::Lines, timing).dragMs({0, 0}, {15, 0}), 8);
}

TEST(TimeModel, CountsShortStepsOverTheWholeDrag) {
    core::PointerTiming timing;
    timing.maxStepDown = 5;
    // 2 cells are 16 counts: 5 + 5 + 5 + 1.
    EXPECT_EQ(modelFor(PenModel::WholeCells, timing).dragMs({0, 0}, {2, 0}), 32);
}

TEST(TimeModel, PricesAPickAsTravelClickAndSettle) {
    const TimeModel model = modelFor(PenModel::WholeCells);
    // Swatch 0 lies at (128 + 24 + 8, 8) = (160, 8): 156 counts from (4, 4) are two reports.
    EXPECT_EQ(model.start(), (core::Point{4, 4}));
    EXPECT_EQ(model.swatch(0), (core::Point{160, 8}));
    EXPECT_EQ(model.pickMs(model.start(), 0), 16 + 33 + 33 + 100);
}

TEST(TimeModel, WorksOutAWholePlanAsByHand) {
    const TimeModel model = modelFor(PenModel::WholeCells);
    const Stroke row{0, {{0, 0}, {15, 0}}};
    const Stroke dot{0, {{0, 1}}};
    const Stroke corner{3, {{0, 2}, {0, 4}, {2, 4}}};
    const Plan plan = timedPlan({row, dot, corner}, model);
    // Pick 182, back 16, click 66 and 120 of drag = 384; back 120 counts 8, click 66 = 458;
    // to swatch 3 at (160, 56) 16, click and settle 166, to (4, 20) 16, click 66, drag 2 x 16 =
    // 754.
    EXPECT_EQ(plan.milliseconds, 754);
    EXPECT_EQ(plan.picks, 2);
    EXPECT_EQ(plan.lifts, 3);
}

TEST(TimeModel, TakesNoTimeForNothing) {
    const Plan plan = timedPlan({}, modelFor(PenModel::WholeCells));
    EXPECT_EQ(plan, Plan{});
}

}  // namespace
}  // namespace pantile::drawing
