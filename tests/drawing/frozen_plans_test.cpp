// Plans and bounds of some pictures as they were measured: a change of the planner that makes them
// longer, or bounds weaker, is to be made on purpose. The same on every machine.

#include <array>

#include <gtest/gtest.h>

#include "drawing/planner.h"
#include "drawing/proven_bound.h"
#include "drawing/replay.h"
#include "drawing/requests.h"
#include "support/matchers.h"

namespace pantile::drawing {
namespace {

using tests::isOk;

struct Frozen {
    DrawingRequest request;
    std::int64_t planMs = 0;
    std::int64_t everyPlanMs = 0;
    std::int64_t pickedOnceMs = 0;
};

std::vector<Frozen> frozenPlans() {
    return {
        {tests::pictureRequest(tests::detailedField(1, 16), {}), 4314, 4232, 4232},
        {tests::pictureRequest(tests::detailedField(2, 24), {}), 9302, 8735, 8965},
        {tests::pictureRequest(tests::ditheredGradient(16), {}), 6088, 6012, 6012},
        {tests::randomRequest(7, 12), 900, 884, 884},
        {tests::randomRequest(12, 12), 1088, 1088, 1088},
    };
}

TEST(FrozenPlans, AreAsQuickAsTheyWere) {
    for (const Frozen& frozen : frozenPlans()) {
        const auto plan = planDrawing(frozen.request);
        ASSERT_THAT(plan, isOk());
        EXPECT_THAT(provePlan(*plan, frozen.request), isOk());
        EXPECT_EQ(plan->milliseconds, frozen.planMs);
    }
}

TEST(FrozenPlans, HaveTheBoundsThatTheyHad) {
    for (const Frozen& frozen : frozenPlans()) {
        const auto bounds = provenBounds(frozen.request);
        ASSERT_THAT(bounds, isOk());
        EXPECT_EQ(bounds->everyPlan, frozen.everyPlanMs);
        EXPECT_EQ(bounds->pickedOnce, frozen.pickedOnceMs);
    }
}

// The last of the colours that there can be.
TEST(FrozenPlans, DrawColour255AsAnyOther) {
    std::vector<core::PaletteIndex> cells;
    for (int i = 0; i < 64; ++i)
        cells.push_back(static_cast<core::PaletteIndex>(i % 3 == 0 ? 255 : i % 5 == 0 ? 254 : 7));
    const DrawingRequest request{core::Grid::create(8, 8, std::move(cells)).value(),
                                 std::nullopt,
                                 tests::canvasFor({8, 8}, 256),
                                 {}};
    const auto plan = planDrawing(request);
    ASSERT_THAT(plan, isOk());
    EXPECT_THAT(provePlan(*plan, request), isOk());
}

}  // namespace
}  // namespace pantile::drawing
