#include "picture/brush.h"

#include <array>

#include "picture/cell_art.h"
#include "picture/path.h"
#include "support/matchers.h"

namespace pantile::picture {
namespace {

using core::ErrorKind;
using core::Point;
using tests::failsWith;

Art dot(core::Size grid, Point at, const Brush& brush) {
    return artOf(stamped(grid, std::array{at}, brush));
}

TEST(Brush, SquareAndRoundAsWorkedByHand) {
    EXPECT_EQ(dot({3, 3}, {1, 1}, {}), (Art{"...", ".#.", "..."}));
    EXPECT_EQ(dot({4, 4}, {1, 1}, {2, BrushShape::Square}), (Art{"....", ".##.", ".##.", "...."}));
    EXPECT_EQ(dot({5, 5}, {2, 2}, {3, BrushShape::Square}),
              (Art{".....", ".###.", ".###.", ".###.", "....."}));
    EXPECT_EQ(dot({5, 5}, {2, 2}, {3, BrushShape::Round}),
              (Art{".....", "..#..", ".###.", "..#..", "....."}));
    EXPECT_EQ(dot({4, 4}, {1, 1}, {4, BrushShape::Round}), (Art{".##.", "####", "####", ".##."}));
}

TEST(Brush, FollowsAPath) {
    EXPECT_EQ(artOf(stamped({6, 4}, linePath({1, 1}, {3, 1}), {2, BrushShape::Square})),
              (Art{"......", ".####.", ".####.", "......"}));
}

TEST(Brush, ReachesInFromOutsideTheGrid) {
    EXPECT_EQ(dot({3, 2}, {-1, 0}, {3, BrushShape::Square}), (Art{"#..", "#.."}));
    EXPECT_EQ(dot({3, 2}, {-2, 0}, {3, BrushShape::Square}), (Art{"...", "..."}));
    EXPECT_EQ(dot({3, 2}, {3, 2}, {3, BrushShape::Square}), (Art{"...", "..#"}));
}

// Against every place near the grid, whether the cell is within the brush's reach.
TEST(Brush, EverySizeOnEveryPlacePaintsWhatItReaches) {
    const core::Size grid{3, 2};
    for (int size = 1; size <= kMaxBrushSize; ++size) {
        for (int x = -20; x <= 22; ++x) {
            for (int y = -20; y <= 21; ++y) {
                CellSet expected(grid);
                for (int dx = -((size - 1) / 2); dx <= size / 2; ++dx) {
                    for (int dy = -((size - 1) / 2); dy <= size / 2; ++dy)
                        expected.add({x + dx, y + dy});
                }
                EXPECT_TRUE(stamped(grid, std::array{Point{x, y}}, {size, BrushShape::Square}) ==
                            expected)
                    << size << " at " << x << "," << y;
            }
        }
    }
}

TEST(Brush, SizesOutOfRangeAreRefused) {
    EXPECT_THAT(checkBrush({0, BrushShape::Square}),
                failsWith(ErrorKind::InvalidInput, "the brush's size is 0"));
    EXPECT_THAT(checkBrush({17, BrushShape::Round}),
                failsWith(ErrorKind::InvalidInput, "outside 1 to 16"));
}

}  // namespace
}  // namespace pantile::picture
