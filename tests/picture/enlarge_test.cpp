#include "picture/enlarge.h"

#include <gtest/gtest.h>

#include "support/matchers.h"

namespace pantile::picture {
namespace {

using core::ErrorKind;
using core::Grid;
using core::Palette;
using core::Rgba8;
using tests::failsWith;
using tests::isOk;

TEST(Enlarge, MakesEveryCellASquare) {
    const Palette palette = *Palette::create({{1, 2, 3}, {4, 5, 6}}, core::PaletteIndex{1});
    const auto pixels = enlarged(*Grid::create(2, 1, {0, 1}), palette, 3);
    ASSERT_THAT(pixels, isOk());
    EXPECT_EQ(pixels->size, (core::Size{6, 3}));
    for (int y = 0; y < 3; ++y) {
        for (int x = 0; x < 6; ++x)
            EXPECT_EQ(pixels->at(x, y), x < 3 ? (Rgba8{1, 2, 3, 255}) : (Rgba8{4, 5, 6, 0}));
    }
}

TEST(Enlarge, RefusesBadFactorsAndStrangeIndices) {
    const Palette palette = *Palette::create({{}, {}});
    const Grid grid = *Grid::filled(2, 2, 0);
    EXPECT_THAT(enlarged(grid, palette, 0), failsWith(ErrorKind::InvalidInput, "factor"));
    EXPECT_THAT(enlarged(grid, palette, 65), failsWith(ErrorKind::InvalidInput, "factor"));
    EXPECT_THAT(enlarged(*Grid::filled(2, 2, 2), palette, 1),
                failsWith(ErrorKind::InvalidInput, "index"));
}

}  // namespace
}  // namespace pantile::picture
