#include "picture/symmetry.h"

#include <array>

#include "picture/cell_art.h"
#include "support/matchers.h"

namespace pantile::picture {
namespace {

using core::Point;
using tests::failsWith;
using tests::isOk;

Art images(core::Size size, Point cell, Symmetry symmetry) {
    const auto cells = repeated(cellsOn(size, std::array{cell}), symmetry);
    EXPECT_THAT(cells, isOk());
    return artOf(*cells);
}

TEST(Symmetry, AsWorkedByHand) {
    EXPECT_EQ(images({4, 3}, {0, 0}, Symmetry::None), (Art{"#...", "....", "...."}));
    EXPECT_EQ(images({4, 3}, {0, 0}, Symmetry::LeftRight), (Art{"#..#", "....", "...."}));
    EXPECT_EQ(images({4, 3}, {1, 0}, Symmetry::TopBottom), (Art{".#..", "....", ".#.."}));
    EXPECT_EQ(images({4, 3}, {1, 0}, Symmetry::Four), (Art{".##.", "....", ".##."}));
    EXPECT_EQ(images({5, 5}, {1, 0}, Symmetry::Eight),
              (Art{".#.#.", "#...#", ".....", "#...#", ".#.#."}));
    EXPECT_EQ(images({3, 3}, {1, 1}, Symmetry::Eight), (Art{"...", ".#.", "..."}));
}

TEST(Symmetry, OnceMoreAddsNothing) {
    tests::Random random(8);
    for (int i = 0; i < 50; ++i) {
        const int side = random.between(1, 12);
        CellSet cells({side, side});
        for (int cell = 0; cell < 5; ++cell) cells.add(randomPoint(random, 0, side - 1));
        for (const Symmetry symmetry : {Symmetry::None, Symmetry::LeftRight, Symmetry::TopBottom,
                                        Symmetry::Four, Symmetry::Eight}) {
            const auto once = repeated(cells, symmetry);
            ASSERT_THAT(once, isOk());
            for (const Point cell : cells.cells()) EXPECT_TRUE(once->has(cell));
            const auto twice = repeated(*once, symmetry);
            ASSERT_THAT(twice, isOk());
            EXPECT_EQ(artOf(*twice), artOf(*once));
        }
    }
}

TEST(Symmetry, EightNeedsASquare) {
    EXPECT_THAT(repeated(CellSet({4, 3}), Symmetry::Eight),
                failsWith(core::ErrorKind::InvalidInput, "this one has 4x3 cells"));
}

}  // namespace
}  // namespace pantile::picture
