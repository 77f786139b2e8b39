#include "picture/ellipse.h"

#include <algorithm>
#include <cstdlib>

#include "picture/cell_art.h"

namespace pantile::picture {
namespace {

using core::Point;

CellBox boxOf(core::Size size) {
    return {0, 0, size.width - 1, size.height - 1};
}

Art outline(core::Size size) {
    return artOf(size, ellipseOutline(boxOf(size)));
}

// Worked by hand from the decision at midpoints, a quarter at a time.
TEST(Ellipse, AsWorkedByHand) {
    EXPECT_EQ(outline({1, 1}), (Art{"#"}));
    EXPECT_EQ(outline({2, 2}), (Art{"##", "##"}));
    EXPECT_EQ(outline({3, 3}), (Art{".#.", "#.#", ".#."}));
    EXPECT_EQ(outline({4, 4}), (Art{".##.", "#..#", "#..#", ".##."}));
    EXPECT_EQ(outline({5, 5}), (Art{".###.", "#...#", "#...#", "#...#", ".###."}));
    EXPECT_EQ(outline({8, 4}), (Art{".######.", "#......#", "#......#", ".######."}));
    EXPECT_EQ(outline({4, 1}), (Art{"####"}));
    EXPECT_EQ(outline({4, 2}), (Art{"####", "####"}));
    // A quarter in cells: x²/25 + y²/4 = 1; in columns 0 to 5 it is at 2, 1.96, 1.83, 1.6, 1.2
    // and 0, so in rows 2, 2, 2, 2, 1 and 0; in row 1 it is at 4.33, so in column 4.
    EXPECT_EQ(outline({11, 5}), (Art{"..#######..",  //
                                     ".#.......#.",  //
                                     "#.........#",  //
                                     ".#.......#.",  //
                                     "..#######.."}));
}

// The midpoint circle by its well-known form: one eighth from the top, a whole number as the
// decision (from memory; J. E. Bresenham, 'A linear algorithm for incremental digital display of
// circular arcs', Communications of the ACM 20(2), 1977, and J. D. Foley and others, 'Computer
// Graphics', 1990, section 3.3).
Path midpointCircle(int radius) {
    Path cells;
    const auto addEight = [&](int x, int y) {
        for (const auto& [p, q] : {Point{x, y}, Point{y, x}}) {
            for (const int column : {-p, p}) {
                for (const int row : {-q, q}) cells.push_back({column + radius, row + radius});
            }
        }
    };
    int x = 0;
    int y = radius;
    int decision = 1 - radius;
    addEight(x, y);
    while (y > x) {
        if (decision < 0) {
            decision += 2 * x + 3;
        } else {
            decision += 2 * (x - y) + 5;
            --y;
        }
        ++x;
        addEight(x, y);
    }
    std::sort(cells.begin(), cells.end());
    cells.erase(std::unique(cells.begin(), cells.end()), cells.end());
    return cells;
}

TEST(Ellipse, CirclesAreTheMidpointCircle) {
    for (int radius = 1; radius <= 100; ++radius) {
        const CellBox box{0, 0, 2 * radius, 2 * radius};
        EXPECT_TRUE(ellipseOutline(box) == midpointCircle(radius)) << radius;
    }
}

// A cell of the outline that no neighbour column or row should have instead: the ellipse passes
// between the middles of its upper and lower (or left and right) side. In fractions, with the
// tolerance of a midpoint's exact hit.
TEST(Ellipse, EveryCellIsTheNearestOfItsColumnOrRow) {
    for (int width = 3; width <= 24; ++width) {
        for (int height = 3; height <= 24; ++height) {
            const double a = (width - 1) / 2.0;
            const double b = (height - 1) / 2.0;
            const auto inside = [&](double x, double y) {
                return x * x / (a * a) + y * y / (b * b);
            };
            for (const Point cell : ellipseOutline(boxOf({width, height}))) {
                const double x = std::abs(cell.x - a);
                const double y = std::abs(cell.y - b);
                const auto crossed = [&](double insideNear, double insideFar, double inner) {
                    return (insideNear <= 1 + 1e-9 || inner < 0.75) && insideFar >= 1 - 1e-9;
                };
                EXPECT_TRUE(crossed(inside(x, y - 0.5), inside(x, y + 0.5), y) ||
                            crossed(inside(x - 0.5, y), inside(x + 0.5, y), x))
                    << width << "x" << height << " at " << ::testing::PrintToString(cell);
            }
        }
    }
}

CellSet mirroredSet(const CellSet& cells, bool across, bool down) {
    CellSet mirrored(cells.size());
    const auto [width, height] = cells.size();
    for (const Point cell : cells.cells())
        mirrored.add({across ? width - 1 - cell.x : cell.x, down ? height - 1 - cell.y : cell.y});
    return mirrored;
}

int piecesOf(const Path& cells) {
    Path unseen = cells;
    int pieces = 0;
    while (!unseen.empty()) {
        ++pieces;
        Path reached{unseen.back()};
        unseen.pop_back();
        while (!reached.empty()) {
            const Point cell = reached.back();
            reached.pop_back();
            const auto beside = std::partition(unseen.begin(), unseen.end(), [cell](Point other) {
                return !areNeighbours(cell, other);
            });
            reached.insert(reached.end(), beside, unseen.end());
            unseen.erase(beside, unseen.end());
        }
    }
    return pieces;
}

TEST(Ellipse, IsSymmetricInOnePieceAndFillsItsBox) {
    for (int width = 1; width <= 20; ++width) {
        for (int height = 1; height <= 20; ++height) {
            const core::Size size{width, height};
            const Path path = ellipseOutline(boxOf(size));
            const CellSet cells = cellsOn(size, path);
            SCOPED_TRACE(std::to_string(width) + "x" + std::to_string(height));
            EXPECT_EQ(cells.cells().size(), path.size()) << "outside the box, or twice";
            EXPECT_EQ(artOf(mirroredSet(cells, true, false)), artOf(cells));
            EXPECT_EQ(artOf(mirroredSet(cells, false, true)), artOf(cells));
            EXPECT_EQ(piecesOf(path), 1);
            EXPECT_TRUE(cells.has({0, (height - 1) / 2}));
            EXPECT_TRUE(cells.has({(width - 1) / 2, 0}));
            Path swapped;
            for (const Point cell : path) swapped.push_back({cell.y, cell.x});
            EXPECT_EQ(artOf({height, width}, swapped), outline({height, width}));
        }
    }
}

TEST(Ellipse, FilledIsTheOutlineAndWhatItEncloses) {
    EXPECT_EQ(artOf(filledEllipse({9, 5}, {0, 0, 8, 4})), (Art{"..#####..",  //
                                                               ".#######.",  //
                                                               "#########",  //
                                                               ".#######.",  //
                                                               "..#####.."}));
    for (int width = 1; width <= 16; ++width) {
        for (int height = 1; height <= 16; ++height) {
            const core::Size size{width, height};
            const CellSet border = cellsOn(size, ellipseOutline(boxOf(size)));
            CellSet expected = border;
            for (int y = 0; y < height; ++y) {
                for (int x = 0; x < width; ++x) {
                    bool left = false;
                    bool right = false;
                    for (int other = 0; other < width; ++other) {
                        if (!border.has({other, y})) continue;
                        left = left || other <= x;
                        right = right || other >= x;
                    }
                    if (left && right) expected.add({x, y});
                }
            }
            EXPECT_EQ(artOf(filledEllipse(size, boxOf(size))), artOf(expected));
        }
    }
}

TEST(Ellipse, IsClippedToTheGrid) {
    const core::Size grid{4, 3};
    EXPECT_EQ(artOf(filledEllipse(grid, {-4096, -4096, 4096, 4096})),
              (Art{"####", "####", "####"}));
    EXPECT_EQ(artOf(grid, ellipseOutline({-4096, -4096, 4096, 4096})),
              (Art{"....", "....", "...."}));
    EXPECT_EQ(artOf(filledEllipse(grid, {2, 1, 6, 5})), (Art{"....", "...#", "..##"}));
}

}  // namespace
}  // namespace pantile::picture
