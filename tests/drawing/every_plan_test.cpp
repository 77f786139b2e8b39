// Bounds and planner against the quickest of all plans of tiny textures, those that pick colours
// several times among them: found by a search over every state of the toolkit.

#include "drawing/every_plan.h"

#include <gtest/gtest.h>

#include "drawing/planner.h"
#include "drawing/proven_bound.h"
#include "drawing/replay.h"
#include "drawing/requests.h"
#include "support/matchers.h"

namespace pantile::drawing {
namespace {

/// Up to 9 cells in up to 3 colours, some unpainted, in half of the cases with lifts so dear that
/// it pays to come back.
DrawingRequest tinyTexture(std::uint64_t seed) {
    tests::Random random(seed);
    const int width = random.between(2, 4);
    std::vector<std::string> rows(static_cast<std::size_t>(random.between(1, 9 / width)));
    for (std::string& row : rows) {
        for (int x = 0; x < width; ++x) row += "0001122."[random.between(0, 7)];
    }
    const auto pen =
        random.between(0, 1) == 0 ? core::PenModel::WholeCells : core::PenModel::Diagonals;
    auto timing = core::PointerTiming::quick();
    timing.reportIntervalMs = seed % 2 == 0 ? 8 : 1;
    if (seed % 4 == 1) timing.settleMs = 0;
    if (seed % 4 == 1) timing.pressMs = timing.releaseMs = 100;
    return tests::requestFor(rows, pen, timing);
}

TEST(EveryPlan, IsNotUnderTheBoundsAndNotFarUnderThePlanner) {
    constexpr std::int64_t kPerMilleAtMost = 70;
    std::int64_t planned = 0;
    std::int64_t quickest = 0;
    for (std::uint64_t seed = 0; seed < 80; ++seed) {
        const DrawingRequest request = tinyTexture(seed);
        const Plan plan = planDrawing(request).value();
        if (plan.strokes.empty()) continue;
        ASSERT_THAT(provePlan(plan, request), tests::isOk());
        const std::int64_t best = tests::EveryPlan(request).quickestMs();
        const ProvenBounds bounds = provenBounds(request).value();
        ASSERT_LE(lowerBoundMs(request), best) << tests::described(seed, request);
        ASSERT_LE(bounds.everyPlan, best) << tests::described(seed, request);
        ASSERT_LE(bounds.everyPlan, bounds.pickedOnce);
        ASSERT_GE(plan.milliseconds, best) << tests::described(seed, request);
        EXPECT_LE(plan.milliseconds, best + best * kPerMilleAtMost / 1000)
            << tests::described(seed, request) << best << " of " << bounds.everyPlan;
        planned += plan.milliseconds;
        quickest += best;
    }
    EXPECT_LE(planned, quickest + quickest / 100);
    RecordProperty("per_mille_slower", std::to_string((planned - quickest) * 1000 / quickest));
}

/// Four arms are one stroke if the middle may be painted wrongly and once more.
TEST(EveryPlan, MayBeQuickerThanAllThatPickEachColourOnce) {
    core::PointerTiming timing;
    timing.reportIntervalMs = 1;
    timing.pressMs = timing.releaseMs = 100;
    timing.settleMs = 0;
    const auto request =
        tests::requestFor({"010", "101", "010"}, core::PenModel::WholeCells, timing);
    const std::int64_t best = tests::EveryPlan(request).quickestMs();
    const ProvenBounds bounds = provenBounds(request).value();
    EXPECT_LT(best, bounds.pickedOnce);
    EXPECT_LE(bounds.everyPlan, best);
}

}  // namespace
}  // namespace pantile::drawing
