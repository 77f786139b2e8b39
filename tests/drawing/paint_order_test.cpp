// paintOrder against times worked out by hand, and its end against the replay.

#include "drawing/paint_order.h"

#include <gmock/gmock.h>

#include "drawing/planner.h"
#include "drawing/replay.h"
#include "drawing/reports.h"
#include "drawing/requests.h"
#include "drawing/timing.h"
#include "support/matchers.h"

namespace pantile::drawing {
namespace {

using core::PenModel;
using testing::ElementsAre;

TEST(PaintOrder, HasTheTimesWorkedOutByHand) {
    const DrawingRequest request = tests::requestFor({"000", "010"});
    const Plan plan = timedPlan({{0, {{0, 0}, {2, 0}}}, {1, {{1, 1}}}},
                                TimeModel(request.canvas, request.timing));
    // To swatch (56, 8) 8, pick 166, back 8, press 33; each cell 8.
    EXPECT_THAT(paintOrder(plan, request.canvas, request.timing),
                ElementsAre(PaintedCell{{0, 0}, 0, 182}, PaintedCell{{1, 0}, 0, 223},
                            PaintedCell{{2, 0}, 0, 231},
                            // Release 33, swatch 1 at (56, 24) 8, pick 166, back 8.
                            PaintedCell{{1, 1}, 1, 231 + 33 + 8 + 166 + 8}));
}

TEST(PaintOrder, FillsAllCellsAtOnceAndJumps) {
    core::PointerTiming timing;
    timing.maxStepDown = 127;
    DrawingRequest request = tests::requestFor({"0010", "0000"}, PenModel::Sampled, timing);
    request.canvas.geometry.fillButton = core::Point{64, 60};
    const Plan plan = timedPlan({{1, {{2, 0}, {0, 1}}, {false, true}}},
                                TimeModel(request.canvas, timing), core::PaletteIndex{0});
    const auto order = paintOrder(plan, request.canvas, timing);
    ASSERT_EQ(order.size(), 10U);
    // Swatch 8, pick 166, button 8; the fill holds 166; then swatch 1 8, pick 166, back 8.
    for (std::size_t i = 0; i < 8; ++i) EXPECT_EQ(order[i].milliseconds, 182);
    EXPECT_EQ(order[8], (PaintedCell{{2, 0}, 1, 182 + 166 + 182}));
    EXPECT_EQ(order[9], (PaintedCell{{0, 1}, 1, 182 + 166 + 182 + 33 + 8}));
}

TEST(PaintOrder, EndsWithWhatTheReplayShows) {
    for (std::uint64_t seed = 0; seed < 30; ++seed) {
        DrawingRequest request = tests::randomRequest(seed, 10);
        Effort effort;
        effort.triesPerCell = 0;
        const Plan plan = planDrawing(request, {}, effort).value();
        const auto shown =
            replay(reportsOf(plan, request.canvas, request.timing), request.canvas, request.timing);
        ASSERT_THAT(shown, tests::isOk());
        std::vector<std::optional<core::PaletteIndex>> cells(shown->cells.size());
        std::int64_t last = 0;
        for (const PaintedCell& each : paintOrder(plan, request.canvas, request.timing)) {
            ASSERT_GE(each.milliseconds, last) << tests::described(seed, request);
            last = each.milliseconds;
            cells[static_cast<std::size_t>(each.cell.y * request.canvas.size.width + each.cell.x)] =
                each.colour;
        }
        EXPECT_EQ(cells, shown->cells) << tests::described(seed, request);
        EXPECT_LE(last, plan.milliseconds);
    }
}

}  // namespace
}  // namespace pantile::drawing
