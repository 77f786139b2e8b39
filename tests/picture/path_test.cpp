#include "picture/path.h"

#include <algorithm>
#include <array>
#include <cstdlib>

#include "picture/cell_art.h"
#include "support/matchers.h"

namespace pantile::picture {
namespace {

using core::ErrorKind;
using core::Point;
using tests::failsWith;
using tests::isOk;

// Worked by hand from the decision rule: with 8 along and 3 across the decisions are
// -2, 4, -6, 0, -10, -4, 2, -8 (+6 after a straight step, -10 after a diagonal one; 0 is diagonal).
TEST(Path, LineAsWorkedByHand) {
    const Path line = linePath({0, 0}, {8, 3});
    EXPECT_EQ(artOf({9, 4}, line), (Art{"##.......",  //
                                        "..##.....",  //
                                        "....###..",  //
                                        ".......##"}));
}

// The line's points by the definition that the decision rule steps through: at each step along the
// longer side the nearest cell across, halves away from the start (Bresenham 1965 takes the
// diagonal step where the decision is 0).
Path nearestCells(Point from, Point to) {
    const Point span{to.x - from.x, to.y - from.y};
    const int longSide = std::max(std::abs(span.x), std::abs(span.y));
    const auto moved = [longSide](int step, int whole) {
        if (longSide == 0) return 0;
        const int size = (2 * step * std::abs(whole) + longSide) / (2 * longSide);
        return whole < 0 ? -size : size;
    };
    Path path;
    for (int step = 0; step <= longSide; ++step)
        path.push_back({from.x + moved(step, span.x), from.y + moved(step, span.y)});
    return path;
}

TEST(Path, LinesFollowBresenhamsRuleInAllDirections) {
    for (int x = -9; x <= 9; ++x) {
        for (int y = -9; y <= 9; ++y) {
            EXPECT_EQ(linePath({3, -2}, {3 + x, -2 + y}), nearestCells({3, -2}, {3 + x, -2 + y}));
        }
    }
    tests::Random random(1965);
    for (int i = 0; i < 30; ++i) {
        const Point from = randomPoint(random, -kMaxCoordinate, kMaxCoordinate);
        const Point to = randomPoint(random, -kMaxCoordinate, kMaxCoordinate);
        EXPECT_TRUE(linePath(from, to) == nearestCells(from, to))
            << ::testing::PrintToString(from) << " to " << ::testing::PrintToString(to);
    }
}

TEST(Path, LinesMirrorWithTheirEnds) {
    for (int x = 0; x <= 12; ++x) {
        for (int y = 0; y <= 12; ++y) {
            Path mirrored;
            Path swapped;
            for (const Point cell : linePath({0, 0}, {x, y})) {
                mirrored.push_back({-cell.x, cell.y});
                swapped.push_back({cell.y, cell.x});
            }
            EXPECT_EQ(linePath({0, 0}, {-x, y}), mirrored);
            EXPECT_EQ(linePath({0, 0}, {y, x}), swapped);
        }
    }
}

TEST(Path, PolylineHasEveryCornerOnce) {
    const std::array<Point, 4> corners = {{{0, 0}, {3, 0}, {3, 2}, {3, 2}}};
    EXPECT_EQ(polylinePath(corners), (Path{{0, 0}, {1, 0}, {2, 0}, {3, 0}, {3, 1}, {3, 2}}));
    EXPECT_EQ(polylinePath(std::span(corners).first(1)), (Path{{0, 0}}));
    EXPECT_TRUE(polylinePath({}).empty());
}

TEST(Path, PlacesOutOfReachAreRefused) {
    EXPECT_THAT(checkPlace({-kMaxCoordinate, kMaxCoordinate}), isOk());
    EXPECT_THAT(checkPlace({kMaxCoordinate + 1, 0}),
                failsWith(ErrorKind::InvalidInput, "the column of the place 4097,0"));
    EXPECT_THAT(checkPlace({0, -2147483647 - 1}),
                failsWith(ErrorKind::InvalidInput, "the row of the place 0,-2147483648"));
}

}  // namespace
}  // namespace pantile::picture
