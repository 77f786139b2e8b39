#include "drawing/least_tree.h"

#include <algorithm>
#include <limits>

#include <gtest/gtest.h>

#include "drawing/requests.h"

namespace pantile::drawing {
namespace {

using Places = std::vector<core::Point>;

/// Steps from one cell to all others through cells of the colours in `passable`; -1 if none.
std::vector<int> stepsFrom(core::Point start, const core::Grid& grid, const PenWays& ways,
                           const ColourSet& passable) {
    std::vector<int> steps(grid.cellCount(), -1);
    Places queue{start};
    steps[cellOffset(start, grid.size())] = 0;
    for (std::size_t head = 0; head < queue.size(); ++head) {
        const int here = steps[cellOffset(queue[head], grid.size())];
        forEachNeighbour(queue[head], ways, [&](core::Point next) {
            int& there = steps[cellOffset(next, grid.size())];
            if (there >= 0 || !passable[grid.at(next)]) return;
            there = here + 1;
            queue.push_back(next);
        });
    }
    return steps;
}

/// Prim's method over all pairs of cells: nothing is known of pieces and waves.
std::int64_t plainTree(core::PaletteIndex colour, const core::Grid& grid, const PenWays& ways,
                       ColourSet passable) {
    passable.set(colour);
    Places cells;
    for (int y = 0; y < grid.height(); ++y) {
        for (int x = 0; x < grid.width(); ++x) {
            if (grid.at(x, y) == colour) cells.push_back({x, y});
        }
    }
    std::vector<std::int64_t> nearest(cells.size(), std::numeric_limits<std::int64_t>::max());
    std::vector<bool> done(cells.size());
    nearest[0] = 0;
    std::int64_t total = 0;
    for (std::size_t round = 0; round < cells.size(); ++round) {
        std::size_t best = cells.size();
        for (std::size_t i = 0; i < cells.size(); ++i) {
            if (!done[i] && (best == cells.size() || nearest[i] < nearest[best])) best = i;
        }
        done[best] = true;
        total += nearest[best];
        const std::vector<int> steps = stepsFrom(cells[best], grid, ways, passable);
        for (std::size_t i = 0; i < cells.size(); ++i) {
            const int there = steps[cellOffset(cells[i], grid.size())];
            const std::int64_t lifted = ways.liftMs[1];
            const std::int64_t ms = there < 0 ? lifted : std::min(lifted, there * ways.stepMs);
            nearest[i] = std::min(nearest[i], ms);
        }
    }
    return total;
}

ColourSet randomSet(tests::Random& random) {
    ColourSet set;
    for (std::size_t i = 0; i < 6; ++i) set[i] = random.between(0, 1) == 1;
    return set;
}

TEST(LeastTree, IsTheOneOfAllPairsOfCells) {
    for (std::uint64_t seed = 0; seed < 80; ++seed) {
        tests::Random random(seed);
        const core::Size size{random.between(2, 10), random.between(2, 10)};
        const auto pen = seed % 3 == 0 ? core::PenModel::Diagonals : core::PenModel::WholeCells;
        core::PointerTiming timing = core::PointerTiming::quick();
        if (seed % 2 == 0) timing.pressMs = timing.releaseMs = random.between(1, 60);
        const DrawingRequest request{tests::randomGrid(random, size, 6), std::nullopt,
                                     tests::canvasFor(size, 6, pen), timing};
        const PenWays ways(request, TimeModel(request.canvas, request.timing));
        LeastTree trees(request, ways, LeastTree::kAnySteps);
        for (const core::PaletteIndex colour : trees.colours()) {
            const ColourSet later = randomSet(random);
            const std::int64_t plain = plainTree(colour, request.grid, ways, later);
            ASSERT_EQ(trees.measured(colour, later), plain) << tests::described(seed, request);
            ASSERT_EQ(trees.milliseconds(colour, later), plain) << "kept answers are the same";
            ASSERT_EQ(trees.milliseconds(colour, later), plain);
        }
    }
}

TEST(LeastTree, OfAPartPassesCellsOfItsOwnColour) {
    const DrawingRequest request = tests::requestFor({"00000"});
    const PenWays ways(request, TimeModel(request.canvas, request.timing));
    Parts parts = Parts::wholeColours(request);
    const Part cut = parts.freeNumber().value();
    EXPECT_EQ(cut, 1);
    for (const int x : {1, 3}) parts.grid.set(x, 0, cut);
    parts.colours[cut] = 0;
    EXPECT_EQ(LeastTree(parts, ways).milliseconds(0, {}), 4 * ways.stepMs);
    parts.colours[cut] = 1;
    EXPECT_EQ(LeastTree(parts, ways).milliseconds(0, {}), 2 * ways.liftMs[1]);
}

}  // namespace
}  // namespace pantile::drawing
