#include "drawing/covering_order.h"

#include <limits>

#include <gtest/gtest.h>

#include "drawing/requests.h"

namespace pantile::drawing {
namespace {

TEST(ShiftToBest, TellsWhatTheTreesGain) {
    constexpr std::int64_t kAnyLoss = std::numeric_limits<std::int64_t>::max() / 2;
    int bettered = 0;
    for (std::uint64_t seed = 1; seed <= 60; ++seed) {
        const DrawingRequest request = tests::randomRequest(seed, 14);
        const PenWays ways(request, TimeModel(request.canvas, request.timing));
        LeastTree trees(request, ways);
        std::vector<core::PaletteIndex> order = trees.colours();
        for (const core::PaletteIndex colour : trees.colours()) {
            const std::int64_t before = treesMs(trees, order);
            const std::int64_t gained = shiftToBest(trees, order, colour, kAnyLoss);
            EXPECT_EQ(before - treesMs(trees, order), gained) << tests::described(seed, request);
            EXPECT_GE(gained, 0);
            if (gained > 0) ++bettered;
        }
    }
    EXPECT_GT(bettered, 20);
}

}  // namespace
}  // namespace pantile::drawing
