#include "picture/fill.h"

#include <cstdlib>

#include "picture/cell_art.h"
#include "support/matchers.h"

namespace pantile::picture {
namespace {

using core::ErrorKind;
using core::Grid;
using core::Point;
using tests::failsWith;
using tests::isOk;

Art connected(const Grid& grid, Point at, Neighbours neighbours) {
    const auto cells = connectedCells(grid, at, neighbours);
    EXPECT_THAT(cells, isOk());
    return artOf(*cells);
}

TEST(Fill, OverSidesAndOverCornersAsWorkedByHand) {
    const Grid grid = gridOf({"01100",  //
                              "10010",  //
                              "10011",  //
                              "11100"});
    EXPECT_EQ(connected(grid, {1, 1}, Neighbours::Four), (Art{".....",  //
                                                              ".##..",  //
                                                              ".##..",  //
                                                              "....."}));
    EXPECT_EQ(connected(grid, {1, 1}, Neighbours::Eight), (Art{"#..##",  //
                                                               ".##.#",  //
                                                               ".##..",  //
                                                               "...##"}));
    const auto alike = likeColouredCells(grid, {3, 3});
    ASSERT_THAT(alike, isOk());
    EXPECT_EQ(artOf(*alike), (Art{"#..##",  //
                                  ".##.#",  //
                                  ".##..",  //
                                  "...##"}));
}

// The component by brute force: cells join it until a whole pass finds none to add.
CellSet component(const Grid& grid, Point at, Neighbours neighbours) {
    CellSet cells(grid.size());
    cells.add(at);
    for (bool grew = true; grew;) {
        grew = false;
        for (int y = 0; y < grid.height(); ++y) {
            for (int x = 0; x < grid.width(); ++x) {
                if (cells.has({x, y}) || grid.at(x, y) != grid.at(at)) continue;
                bool touches = false;
                for (const Point cell : cells.cells()) {
                    const int steps = std::abs(cell.x - x) + std::abs(cell.y - y);
                    touches =
                        touches ||
                        (neighbours == Neighbours::Four ? steps == 1 : areNeighbours(cell, {x, y}));
                }
                if (touches) {
                    cells.add({x, y});
                    grew = true;
                }
            }
        }
    }
    return cells;
}

TEST(Fill, IsExactlyTheConnectedCells) {
    tests::Random random(4);
    for (int i = 0; i < 100; ++i) {
        const core::Size size = randomSize(random, 9);
        const Grid grid = randomGrid(size, 2, random);
        const Point at{random.between(0, size.width - 1), random.between(0, size.height - 1)};
        for (const Neighbours neighbours : {Neighbours::Four, Neighbours::Eight}) {
            EXPECT_EQ(connected(grid, at, neighbours), artOf(component(grid, at, neighbours)))
                << ::testing::PrintToString(artOf(grid)) << " from "
                << ::testing::PrintToString(at);
        }
    }
}

TEST(Fill, TheLargestGridIsFilledWhole) {
    const Grid grid = *Grid::filled(256, 256, 3);
    const auto cells = connectedCells(grid, {255, 0}, Neighbours::Eight);
    ASSERT_THAT(cells, isOk());
    EXPECT_EQ(cells->cells().size(), 65536U);
}

TEST(Fill, PlacesOutsideAreRefused) {
    const Grid grid = gridOf({"01"});
    EXPECT_THAT(
        connectedCells(grid, {2, 0}, Neighbours::Four),
        failsWith(ErrorKind::InvalidInput, "the place 2,0 is outside the texture of 2x1 cells"));
    EXPECT_THAT(likeColouredCells(grid, {0, -1}), failsWith(ErrorKind::InvalidInput, "0,-1"));
}

TEST(Fill, ReplaceAndSwap) {
    const Grid grid = gridOf({"0120", "2211"});
    EXPECT_EQ(artOf(replaced(grid, 2, 0)), (Art{"0100", "0011"}));
    EXPECT_EQ(artOf(swapped(grid, 1, 2)), (Art{"0210", "1122"}));
    EXPECT_EQ(replaced(grid, 2, 2), grid);
    EXPECT_EQ(swapped(grid, 1, 1), grid);
    EXPECT_EQ(swapped(swapped(grid, 0, 2), 2, 0), grid);
}

TEST(CellSet, PaintsAllOrOnlyOneColour) {
    const Grid grid = gridOf({"012", "012"});
    CellSet cells(grid.size());
    cells.add({0, 0});
    cells.add({1, 0});
    cells.add({1, 1});
    cells.add({3, 0});
    cells.add({0, -1});
    EXPECT_EQ(cells.cells(), (std::vector<Point>{{0, 0}, {1, 0}, {1, 1}}));
    EXPECT_EQ(artOf(painted(grid, cells, 5)), (Art{"552", "052"}));
    EXPECT_EQ(artOf(painted(grid, cells, 5, core::PaletteIndex{1})), (Art{"052", "052"}));
}

}  // namespace
}  // namespace pantile::picture
