#include "core/grid.h"

#include "support/matchers.h"

namespace pantile::core {
namespace {

using tests::failsWith;
using tests::isOk;

TEST(Grid, HoldsItsCellsRowByRow) {
    const Grid grid = *Grid::create(3, 2, {0, 1, 2, 3, 4, 5});
    EXPECT_EQ(grid.at(0, 0), 0);
    EXPECT_EQ(grid.at(2, 0), 2);
    EXPECT_EQ(grid.at(0, 1), 3);
    EXPECT_EQ(grid.at({2, 1}), 5);
    EXPECT_EQ(grid.largestIndex(), 5);
    EXPECT_TRUE(grid.contains({2, 1}));
    EXPECT_FALSE(grid.contains({3, 1}));
    EXPECT_FALSE(grid.contains({0, -1}));
}

TEST(Grid, AcceptsTheSmallestAndTheLargestSides) {
    EXPECT_THAT(Grid::filled(1, 1, 0), isOk());
    EXPECT_THAT(Grid::filled(256, 256, 255), isOk());
    EXPECT_THAT(Grid::filled(1, 256, 9), isOk());
}

TEST(Grid, RefusesSidesOutsideTheirRangeBeforeAllocating) {
    EXPECT_THAT(Grid::filled(0, 5, 0), failsWith(ErrorKind::InvalidInput, "0x5"));
    EXPECT_THAT(Grid::filled(257, 5, 0), failsWith(ErrorKind::InvalidInput, "257x5"));
    EXPECT_THAT(Grid::filled(-3, 5, 0), failsWith(ErrorKind::InvalidInput, "-3x5"));
    EXPECT_THAT(Grid::create(2147483647, 2147483647, {}),
                failsWith(ErrorKind::InvalidInput, "256x256"));
}

TEST(Grid, RefusesAWrongNumberOfCells) {
    EXPECT_THAT(Grid::create(2, 2, {0, 1, 2}),
                failsWith(ErrorKind::InvalidInput, "needs 4 cells, not 3"));
}

}  // namespace
}  // namespace pantile::core
