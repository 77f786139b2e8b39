#include "picture/curve.h"

#include <algorithm>
#include <cstdlib>

#include "picture/cell_art.h"

namespace pantile::picture {
namespace {

using core::Point;

// Worked by hand: y = 4 - (x - 4)² / 4, so at columns 0 to 8 the rows are 0, 1.75, 3, 3.75, 4 and
// back; where it is steep the columns at rows 1 and 2 are 4 - sqrt(12) = 0.54 and 4 - sqrt(8)
// = 1.17.
TEST(Curve, AsWorkedByHand) {
    EXPECT_EQ(artOf({9, 5}, curvePath({0, 0}, {4, 4}, {8, 0})), (Art{"#.......#",  //
                                                                     ".#.....#.",  //
                                                                     ".#.....#.",  //
                                                                     "..#...#..",  //
                                                                     "...###..."}));
}

TEST(Curve, ThreePlacesInALineGiveTheLine) {
    EXPECT_EQ(curvePath({0, 0}, {3, 3}, {6, 6}), linePath({0, 0}, {6, 6}));
    EXPECT_EQ(curvePath({0, 2}, {5, 2}, {10, 2}), linePath({0, 2}, {10, 2}));
    EXPECT_EQ(curvePath({7, 7}, {7, 7}, {7, 7}), (Path{{7, 7}}));
    for (int y = 0; y <= 20; y += 2) {
        EXPECT_EQ(curvePath({0, 0}, {11, y / 2}, {22, y}), linePath({0, 0}, {22, y}));
    }
}

TEST(Curve, IsOneThinPathThroughItsThreePlaces) {
    tests::Random random(7);
    for (int i = 0; i < 200; ++i) {
        const auto [from, through, to] = randomCurve(random, -40, 40);
        const Path path = curvePath(from, through, to);
        EXPECT_EQ(path.front(), from);
        EXPECT_EQ(path.back(), to);
        EXPECT_NE(std::find(path.begin(), path.end(), through), path.end());
        for (std::size_t cell = 1; cell < path.size(); ++cell)
            ASSERT_TRUE(areNeighbours(path[cell - 1], path[cell])) << i << " at " << cell;
        for (std::size_t cell = 2; cell < path.size(); ++cell) {
            const Point before = path[cell - 2];
            const bool corner =
                std::abs(before.x - path[cell].x) == 1 && std::abs(before.y - path[cell].y) == 1;
            EXPECT_TRUE(!corner || path[cell - 1] == through) << i << " at " << cell;
        }
    }
}

// Every cell has a point of the curve within it: found by going along the curve in small steps,
// in other arithmetic (from memory: the curve's form with a control point, which is
// 2 through - (from + to) / 2).
TEST(Curve, EveryCellIsMetByTheCurve) {
    tests::Random random(8);
    for (int i = 0; i < 20; ++i) {
        const auto [from, through, to] = randomCurve(random, -20, 20);
        for (const Point cell : curvePath(from, through, to)) {
            double nearest = 1000;
            for (int step = 0; step <= 2000; ++step) {
                const double t = step / 2000.0;
                const auto at = [t](int p, int q, int r) {
                    const double control = 2.0 * q - (p + r) / 2.0;
                    return (1 - t) * (1 - t) * p + 2 * t * (1 - t) * control + t * t * r;
                };
                nearest =
                    std::min(nearest, std::max(std::abs(at(from.x, through.x, to.x) - cell.x),
                                               std::abs(at(from.y, through.y, to.y) - cell.y)));
            }
            EXPECT_LE(nearest, 0.55) << i << ": " << ::testing::PrintToString(cell);
        }
    }
}

TEST(Curve, TheFarthestPlacesNeitherOverflowNorHang) {
    const int far = kMaxCoordinate;
    const Path path = curvePath({-far, -far}, {far, far}, {-far, far});
    EXPECT_EQ(path.front(), (Point{-far, -far}));
    EXPECT_EQ(path.back(), (Point{-far, far}));
    for (std::size_t cell = 1; cell < path.size(); ++cell)
        ASSERT_TRUE(areNeighbours(path[cell - 1], path[cell])) << cell;
}

}  // namespace
}  // namespace pantile::picture
