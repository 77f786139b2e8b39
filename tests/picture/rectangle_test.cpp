#include "picture/rectangle.h"

#include <algorithm>

#include "picture/cell_art.h"

namespace pantile::picture {
namespace {

TEST(Rectangle, OutlineAndFilledAsWorkedByHand) {
    const CellBox box = boxBetween({4, 1}, {1, 3});
    EXPECT_EQ(box, (CellBox{1, 1, 4, 3}));
    EXPECT_EQ(artOf({6, 5}, rectanglePath(box)), (Art{"......",  //
                                                      ".####.",  //
                                                      ".#..#.",  //
                                                      ".####.",  //
                                                      "......"}));
    EXPECT_EQ(artOf(filledRectangle({6, 5}, box)), (Art{"......",  //
                                                        ".####.",  //
                                                        ".####.",  //
                                                        ".####.",  //
                                                        "......"}));
}

TEST(Rectangle, OneRowOrColumnIsALine) {
    EXPECT_EQ(rectanglePath({2, 5, 4, 5}), (Path{{2, 5}, {3, 5}, {4, 5}}));
    EXPECT_EQ(rectanglePath({2, 5, 2, 6}), (Path{{2, 5}, {2, 6}}));
    EXPECT_EQ(rectanglePath({2, 5, 2, 5}), (Path{{2, 5}}));
}

TEST(Rectangle, TheBorderIsEveryBorderCellOnce) {
    for (int width = 1; width <= 6; ++width) {
        for (int height = 1; height <= 6; ++height) {
            Path path = rectanglePath({0, 0, width - 1, height - 1});
            std::sort(path.begin(), path.end());
            EXPECT_EQ(std::adjacent_find(path.begin(), path.end()), path.end());
            const bool thin = width == 1 || height == 1;
            EXPECT_EQ(static_cast<int>(path.size()),
                      thin ? width * height : 2 * (width + height) - 4);
        }
    }
}

TEST(Rectangle, IsClippedToTheGrid) {
    EXPECT_EQ(artOf(filledRectangle({3, 2}, {-4096, -4096, 4096, 0})), (Art{"###", "..."}));
    EXPECT_EQ(artOf(filledRectangle({3, 2}, {3, 0, 9, 9})), (Art{"...", "..."}));
    EXPECT_EQ(artOf({3, 2}, rectanglePath({1, 1, 4096, 4096})), (Art{"...", ".##"}));
}

}  // namespace
}  // namespace pantile::picture
