#include "drawing/visit_search.h"

#include <gtest/gtest.h>

#include "drawing/covering_order.h"
#include "drawing/requests.h"
#include "support/matchers.h"

namespace pantile::drawing {
namespace {

struct Found {
    std::int64_t treesMs = 0;
    std::size_t picks = 0;
};

Found foundIn(const DrawingRequest& request, std::int64_t mostWork) {
    const TimeModel model(request.canvas, request.timing);
    const PenWays ways(request, model);
    EXPECT_TRUE(mayComeBack(request, ways));
    LeastTree colours(request, ways);
    VisitEffort effort{mostWork};
    const auto visits =
        seekVisits(request, model, ways, coveringOrder(colours, mostWork), effort, {});
    EXPECT_THAT(visits, tests::isOk());
    LeastTree trees(visits->parts, ways);
    return {treesMs(trees, visits->order), visits->order.size()};
}

// Cuts are tried in rounds, as long as one of a round paid. A change of the search that makes these
// sums greater is to be made on purpose; they are the same on every machine.
TEST(VisitSearch, FindsVisitsAsGoodAsItDid) {
    // A lift takes as long as sixteen steps.
    constexpr core::PointerTiming kSlowButton{8, 127, 8, 60, 60, 50};
    std::int64_t treesMs = 0;
    std::size_t picks = 0;
    for (std::uint64_t seed = 1; seed <= 12; ++seed) {
        tests::Random random(seed);
        core::Grid grid = tests::randomGrid(random, {20, 20}, 4);
        const Found found = foundIn(tests::pictureRequest(std::move(grid), kSlowButton), 150000);
        treesMs += found.treesMs;
        picks += found.picks;
    }
    EXPECT_EQ(treesMs, 100400);
    EXPECT_EQ(picks, 59U);
}

}  // namespace
}  // namespace pantile::drawing
