#include "drawing/effort.h"

#include <limits>

#include <gtest/gtest.h>

#include "drawing/planner.h"
#include "drawing/requests.h"

namespace pantile::drawing {
namespace {

TEST(EffortFor, IsCountedAndNotTimed) {
    const auto request =
        tests::pictureRequest(tests::detailedField(1, 20), core::PointerTiming::quick());
    EXPECT_EQ(effortFor(10, request).leastTries, 10 * 120) << "docs/drawing.md section 5.1";
    EXPECT_EQ(effortFor(10, request).mostTries, 10 * 120);
    const Plan plan = planDrawing(request, {}, effortFor(10, request)).value();
    EXPECT_EQ(plan, planDrawing(request, {}, effortFor(10, request)).value());
    EXPECT_LT(plan.milliseconds,
              planDrawing(request, {}, effortFor(0, request)).value().milliseconds);
}

TEST(EffortFor, IsLessWhereWaysAreLong) {
    core::PointerTiming timing = core::PointerTiming::quick();
    timing.reportIntervalMs = 1;
    const auto request = tests::pictureRequest(tests::ditheredGradient(16), timing);
    EXPECT_EQ(effortFor(10, request).mostTries, 10 * 60);
}

TEST(EffortFor, OfNothingIsTheFirstPlanAlone) {
    const auto request =
        tests::pictureRequest(tests::ditheredGradient(12), core::PointerTiming::quick());
    const Effort none{0, 0, 0, 1};
    for (const std::int64_t budgetMs : {std::int64_t{0}, std::int64_t{-5}}) {
        EXPECT_EQ(planDrawing(request, {}, effortFor(budgetMs, request)).value(),
                  planDrawing(request, {}, none).value());
    }
}

TEST(EffortFor, KnowsNoMoreThanAnHour) {
    const auto request =
        tests::pictureRequest(tests::ditheredGradient(8), core::PointerTiming::quick());
    EXPECT_EQ(effortFor(std::numeric_limits<std::int64_t>::max(), request).mostTries,
              effortFor(3'600'000, request).mostTries);
}

}  // namespace
}  // namespace pantile::drawing
