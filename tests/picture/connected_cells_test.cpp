#include "picture/connected_cells.h"

#include <gtest/gtest.h>

#include "picture/textures.h"

namespace pantile::picture {
namespace {

using core::Grid;

std::vector<int> labelsOf(const Components& components, const Grid& grid) {
    std::vector<int> labels;
    for (int cell = 0; cell < static_cast<int>(grid.cellCount()); ++cell)
        labels.push_back(components.at(cell));
    return labels;
}

TEST(Components, HangTogetherOverSidesOrCornersToo) {
    // Worked by hand.
    const Grid grid = gridOf({"110",  //
                              "001",  //
                              "011"});
    EXPECT_EQ(labelsOf(Components(grid, Neighbours::Four), grid), (std::vector<int>{0, 0, 1,  //
                                                                                    2, 2, 3,  //
                                                                                    2, 3, 3}));
    EXPECT_EQ(labelsOf(Components(grid, Neighbours::Eight), grid), (std::vector<int>{0, 0, 1,  //
                                                                                     1, 1, 0,  //
                                                                                     1, 0, 0}));
}

TEST(Components, DoNotWrapAtTheEdges) {
    EXPECT_EQ(Components(gridOf({"101"}), Neighbours::Eight).count(), 3);
    EXPECT_EQ(Components(gridOf({"11", "00", "11"}), Neighbours::Four).count(), 3);
}

TEST(Components, HoldEveryCellOnceAndNothingOfTheirColourBeside) {
    tests::Random random(21);
    for (int round = 0; round < 60; ++round) {
        const Grid grid = randomGrid({random.between(1, 12), random.between(1, 12)},
                                     random.between(1, 4), random);
        const Neighbours neighbours = round % 2 == 0 ? Neighbours::Four : Neighbours::Eight;
        const Components components(grid, neighbours);
        std::vector<int> seen(grid.cellCount(), 0);
        for (int component = 0; component < components.count(); ++component) {
            for (const int cell : components.cellsOf(component)) {
                ++seen[static_cast<std::size_t>(cell)];
                ASSERT_EQ(components.at(cell), component);
                visitCellsBeside(grid.size(), cell, neighbours, [&](int beside) {
                    const bool sameColour = grid.cells()[static_cast<std::size_t>(beside)] ==
                                            grid.cells()[static_cast<std::size_t>(cell)];
                    ASSERT_EQ(sameColour, components.at(beside) == component);
                });
            }
        }
        ASSERT_EQ(seen, std::vector<int>(grid.cellCount(), 1));
    }
}

}  // namespace
}  // namespace pantile::picture
