#include "picture/transform.h"

#include "picture/cell_art.h"

namespace pantile::picture {
namespace {

using core::Grid;

const Art kSix = {"012", "345"};

TEST(Transform, AsWorkedByHand) {
    const Grid six = gridOf(kSix);
    EXPECT_EQ(artOf(mirrored(six, Mirror::LeftRight)), (Art{"210", "543"}));
    EXPECT_EQ(artOf(mirrored(six, Mirror::TopBottom)), (Art{"345", "012"}));
    EXPECT_EQ(artOf(turned(six, Turn::Quarter)), (Art{"30", "41", "52"}));
    EXPECT_EQ(artOf(turned(six, Turn::Half)), (Art{"543", "210"}));
    EXPECT_EQ(artOf(turned(six, Turn::ThreeQuarters)), (Art{"25", "14", "03"}));
    EXPECT_EQ(artOf(shifted(six, {1, 0})), (Art{"201", "534"}));
    EXPECT_EQ(artOf(shifted(six, {-1, 1})), (Art{"453", "120"}));
}

TEST(Transform, ThereAndBackIsTheSame) {
    tests::Random random(90);
    for (int i = 0; i < 100; ++i) {
        const Grid grid = randomGrid(randomSize(random, 20), 9, random);
        SCOPED_TRACE(::testing::PrintToString(artOf(grid)));
        for (const Mirror mirror : {Mirror::LeftRight, Mirror::TopBottom})
            EXPECT_EQ(mirrored(mirrored(grid, mirror), mirror), grid);
        Grid four = grid;
        for (int turn = 0; turn < 4; ++turn) four = turned(four, Turn::Quarter);
        EXPECT_EQ(four, grid);
        EXPECT_EQ(turned(turned(grid, Turn::Quarter), Turn::ThreeQuarters), grid);
        EXPECT_EQ(turned(turned(grid, Turn::Half), Turn::Half), grid);
        EXPECT_EQ(mirrored(mirrored(grid, Mirror::LeftRight), Mirror::TopBottom),
                  turned(grid, Turn::Half));
        const core::Point by = randomPoint(random, -600, 600);
        EXPECT_EQ(shifted(shifted(grid, by), {-by.x, -by.y}), grid);
        EXPECT_EQ(shifted(grid, {by.x * grid.width(), by.y * grid.height()}), grid);
    }
}

TEST(Transform, TheLargestShiftsWrapToo) {
    constexpr int kLeast = -2147483647 - 1;
    constexpr int kMost = 2147483647;
    EXPECT_EQ(artOf(shifted(gridOf(kSix), {kMost, kLeast})), (Art{"201", "534"}));
}

}  // namespace
}  // namespace pantile::picture
