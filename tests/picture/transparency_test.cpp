#include "picture/transparency.h"

#include <gtest/gtest.h>

namespace pantile::picture {
namespace {

LinearPicture oneCell(double alpha) {
    return {{1, 1}, {{{0.25, 0.5, 1}, alpha}}};
}

TEST(Transparency, CutsBelowTheThresholdOnly) {
    EXPECT_FALSE(cutByAlpha(oneCell(127 / 255.0), 128).cells[0]);
    ASSERT_TRUE(cutByAlpha(oneCell(128 / 255.0), 128).cells[0]);
    EXPECT_EQ(cutByAlpha(oneCell(128 / 255.0), 128).cells[0]->g, 0.5) << "the colour stays";
    EXPECT_TRUE(cutByAlpha(oneCell(0), 0).cells[0]) << "nothing is below 0";
    EXPECT_FALSE(cutByAlpha(oneCell(254 / 255.0), 255).cells[0]);
    EXPECT_TRUE(cutByAlpha(oneCell(1), 255).cells[0]);
}

TEST(Transparency, MixesWithTheBackgroundInLinearLight) {
    const CellColours cells = layOn(oneCell(0.5), {255, 0, 255});
    ASSERT_TRUE(cells.cells[0]);
    EXPECT_DOUBLE_EQ(cells.cells[0]->r, 0.625);
    EXPECT_DOUBLE_EQ(cells.cells[0]->g, 0.25);
    EXPECT_DOUBLE_EQ(cells.cells[0]->b, 1);
    EXPECT_DOUBLE_EQ(layOn(oneCell(0), {255, 0, 255}).cells[0]->g, 0);
}

}  // namespace
}  // namespace pantile::picture
