#include "core/runs.h"

#include <gtest/gtest.h>

#include "support/random.h"

namespace pantile::core {
namespace {

TEST(Runs, GoOnPastTheEndOfARow) {
    const Grid grid = *Grid::create(2, 2, {4, 7, 7, 7});
    EXPECT_EQ(runsOf(grid.cells()), (std::vector<core::Run>{{4, 1}, {7, 3}}));
}

TEST(Runs, OfAnyCellsGiveThemBackAndNeverRepeatAColour) {
    tests::Random random(3);
    for (int round = 0; round < 200; ++round) {
        std::vector<PaletteIndex> cells(static_cast<std::size_t>(random.between(1, 300)));
        for (PaletteIndex& cell : cells) cell = static_cast<PaletteIndex>(random.between(0, 2));
        std::vector<PaletteIndex> back;
        int last = -1;
        for (const core::Run& run : runsOf(cells)) {
            EXPECT_NE(run.colour, last);
            EXPECT_GE(run.length, 1U);
            back.insert(back.end(), run.length, run.colour);
            last = run.colour;
        }
        EXPECT_EQ(back, cells);
    }
}

}  // namespace
}  // namespace pantile::core
