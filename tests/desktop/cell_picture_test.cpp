#include "desktop/views/cell_picture.h"

#include <gtest/gtest.h>

namespace pantile::desktop {
namespace {

constexpr Hatch kHatch{qRgb(1, 2, 3), qRgb(200, 201, 202)};

// 2 x 2: red, green / blue, left unpainted.
core::Texture fourCells() {
    return *core::Texture::create(
        *core::Grid::create(2, 2, {0, 1, 2, 3}),
        *core::Palette::create({{255, 0, 0}, {0, 255, 0}, {0, 0, 255}, {9, 9, 9}},
                               core::PaletteIndex{3}));
}

TEST(CellPicture, TakesTheLargestWholeMultiple) {
    const QImage image = cellPicture(fourCells(), 7, Repeat::Once, kHatch);
    EXPECT_EQ(image.size(), QSize(6, 6));
    for (int y = 0; y < 3; ++y) {
        for (int x = 0; x < 3; ++x) {
            EXPECT_EQ(image.pixel(x, y), qRgb(255, 0, 0));
            EXPECT_EQ(image.pixel(x + 3, y), qRgb(0, 255, 0));
            EXPECT_EQ(image.pixel(x, y + 3), qRgb(0, 0, 255));
        }
    }
}

TEST(CellPicture, HatchesWhatIsLeftUnpainted) {
    const QImage image = cellPicture(fourCells(), 20, Repeat::Once, kHatch);
    int lines = 0;
    for (int y = 10; y < 20; ++y) {
        for (int x = 10; x < 20; ++x) {
            const QRgb pixel = image.pixel(x, y);
            ASSERT_TRUE(pixel == kHatch.line || pixel == kHatch.ground);
            lines += pixel == kHatch.line ? 1 : 0;
            // A diagonal: one to the left and one down is of the same line.
            if (x > 10 && y < 19) {
                ASSERT_EQ(pixel, image.pixel(x - 1, y + 1));
            }
        }
    }
    EXPECT_EQ(lines, 20) << "one pixel in five of a hundred";
}

TEST(CellPicture, RepeatsThreeByThree) {
    const QImage image = cellPicture(fourCells(), 12, Repeat::ThreeByThree, kHatch);
    ASSERT_EQ(image.size(), QSize(12, 12));
    for (int y = 0; y < 12; y += 4) {
        for (int x = 0; x < 12; x += 4) {
            EXPECT_EQ(image.pixel(x, y), qRgb(255, 0, 0));
            EXPECT_EQ(image.pixel(x + 2, y), qRgb(0, 255, 0));
            EXPECT_EQ(image.pixel(x, y + 2), qRgb(0, 0, 255));
        }
    }
}

TEST(CellPicture, AveragesInLinearLightWhereThereIsLessThanAPixelForACell) {
    const core::Texture board =
        *core::Texture::create(*core::Grid::create(2, 2, {0, 1, 1, 0}),
                               *core::Palette::create({{0, 0, 0}, {255, 255, 255}}));
    const QImage image = cellPicture(board, 1, Repeat::Once, kHatch);
    ASSERT_EQ(image.size(), QSize(1, 1));
    // Half the light is 188 in sRGB (IEC 61966-2-1), where half of the values would be 128.
    EXPECT_EQ(image.pixel(0, 0), qRgb(188, 188, 188));
}

TEST(CellPicture, KeepsThePartsOfAWideTexture) {
    const core::Texture wide = *core::Texture::create(
        *core::Grid::filled(8, 2, 0), *core::Palette::create({{5, 6, 7}, {8, 9, 10}}));
    EXPECT_EQ(cellPicture(wide, 32, Repeat::Once, kHatch).size(), QSize(32, 8));
    EXPECT_EQ(cellPicture(wide, 4, Repeat::Once, kHatch).size(), QSize(4, 1));
}

}  // namespace
}  // namespace pantile::desktop
