#include "picture/eye_blur.h"

#include <cmath>

#include <gtest/gtest.h>

#include "picture/pictures.h"

namespace pantile::picture {
namespace {

// The Gaussian's definition: exp(-d² / (2 sigma²)), cut off at six cells, with the sum 1.
TEST(EyeBlur, HasTheWeightsOfAGaussian) {
    double sum = 0;
    for (int d = -6; d <= 6; ++d) sum += std::exp(-d * d / (2 * 1.5 * 1.5));
    for (int d = -6; d <= 6; ++d)
        EXPECT_NEAR(eyeWeights()[static_cast<std::size_t>(d + 6)],
                    std::exp(-d * d / (2 * 1.5 * 1.5)) / sum, 1e-15);
}

TEST(EyeBlur, SpreadsASingleCellByBothSidesWeights) {
    CellColours cells = flatCells({25, 25}, {0, 0, 0});
    cells.cells[12 * 25 + 12] = {1, 0.5, 0};
    const CellColours blurred = blurredByEye(cells);
    for (int y = 6; y < 19; ++y) {
        for (int x = 6; x < 19; ++x) {
            const double weight = eyeWeights()[static_cast<std::size_t>(x - 6)] *
                                  eyeWeights()[static_cast<std::size_t>(y - 6)];
            const auto& cell = *blurred.cells[static_cast<std::size_t>(y * 25 + x)];
            EXPECT_NEAR(cell.r, weight, 1e-12);
            EXPECT_NEAR(cell.g, weight / 2, 1e-12);
            EXPECT_EQ(cell.b, 0);
        }
    }
}

TEST(EyeBlur, LeavesFlatColoursAloneUpToEdgesAndUnpaintedCells) {
    CellColours cells = flatCells({9, 5}, {0.25, 0.5, 0.75});
    cells.cells[20].reset();
    const CellColours blurred = blurredByEye(cells);
    for (std::size_t i = 0; i < blurred.cells.size(); ++i) {
        ASSERT_EQ(blurred.cells[i].has_value(), i != 20);
        if (i == 20) continue;
        EXPECT_NEAR(blurred.cells[i]->g, 0.5, 1e-12);
    }
}

}  // namespace
}  // namespace pantile::picture
