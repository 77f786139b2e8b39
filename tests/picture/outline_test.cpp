#include "picture/outline.h"

#include <cstdlib>

#include "picture/cell_art.h"

namespace pantile::picture {
namespace {

TEST(Outline, AroundAShapeAsWorkedByHand) {
    const core::Grid grid = gridOf({"000000",  //
                                    "001200",  //
                                    "000100",  //
                                    "000000"});
    EXPECT_EQ(artOf(outlineOn(grid, 0, Neighbours::Four)), (Art{"..##..",  //
                                                                ".#..#.",  //
                                                                "..#.#.",  //
                                                                "...#.."}));
    EXPECT_EQ(artOf(outlineOn(grid, 0, Neighbours::Eight)), (Art{".####.",  //
                                                                 ".#..#.",  //
                                                                 ".##.#.",  //
                                                                 "..###."}));
    EXPECT_TRUE(outlineOn(grid, 5, Neighbours::Eight).cells().empty());
    EXPECT_TRUE(outlineOn(gridOf({"00", "00"}), 0, Neighbours::Eight).cells().empty());
}

TEST(Outline, IsTheBackgroundBesideAnythingElse) {
    tests::Random random(5);
    for (int i = 0; i < 50; ++i) {
        const core::Grid grid = randomGrid(randomSize(random, 8), 3, random);
        for (const Neighbours neighbours : {Neighbours::Four, Neighbours::Eight}) {
            CellSet expected(grid.size());
            CellSet all(grid.size());
            for (int y = 0; y < grid.height(); ++y) {
                for (int x = 0; x < grid.width(); ++x) all.add({x, y});
            }
            for (const core::Point cell : all.cells()) {
                for (const core::Point other : all.cells()) {
                    const int steps = std::abs(cell.x - other.x) + std::abs(cell.y - other.y);
                    const bool beside =
                        neighbours == Neighbours::Four ? steps == 1 : areNeighbours(cell, other);
                    if (beside && grid.at(cell) == 0 && grid.at(other) != 0) expected.add(cell);
                }
            }
            EXPECT_EQ(artOf(outlineOn(grid, 0, neighbours)), artOf(expected))
                << ::testing::PrintToString(artOf(grid));
        }
    }
}

}  // namespace
}  // namespace pantile::picture
