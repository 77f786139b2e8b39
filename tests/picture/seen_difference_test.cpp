#include "picture/seen_difference.h"

#include <gtest/gtest.h>

#include "picture/picture_difference.h"
#include "picture/pictures.h"

namespace pantile::picture {
namespace {

using core::LinearRgb;

std::vector<LinearRgb> coloursOf(const CellColours& cells) {
    std::vector<LinearRgb> colours;
    for (const auto& cell : cells.cells) colours.push_back(cell.value_or(LinearRgb{}));
    return colours;
}

TEST(SeenDifference, OfThePictureItselfIsNothing) {
    const CellColours haze = hazeCells({16, 12}, 1);
    EXPECT_NEAR(SeenDifference(haze, 1).refresh(coloursOf(haze)), 0, 1e-6);
}

TEST(SeenDifference, IsNearTheReportedFigures) {
    // With strength 1 the perceived difference and a tenth of the plain one, summed up.
    const CellColours wanted = hazeCells({24, 24}, 2);
    const CellColours shown = cellsOf(randomPixels(24, 24, 3));
    const double expected =
        meanPerceivedDifference(wanted, shown) + meanDifference(wanted, shown) / 10;
    const double loss = SeenDifference(wanted, 1).refresh(coloursOf(shown)) / (24 * 24);
    EXPECT_NEAR(loss / expected, 1, 0.1);
}

TEST(SeenDifference, ForeseesWhatAChangeDoesToItsSlopes) {
    // After a change by d the pull is what it was plus the stiffness times d.
    CellColours wanted = hazeCells({14, 14}, 4);
    wanted.cells[40].reset();
    SeenDifference difference(wanted, 0.7);
    difference.refresh(coloursOf(cellsOf(randomPixels(14, 14, 5))));
    const LinearRgb d{0.1, -0.2, 0.3};
    for (const std::size_t cell : {0U, 39U, 100U, 195U}) {
        const auto before = difference.response(cell);
        difference.change(cell, d);
        const auto after = difference.response(cell);
        const LinearRgb expected = before.stiffness.times(d);
        EXPECT_NEAR(after.pull.r - before.pull.r, expected.r, 1e-9);
        EXPECT_NEAR(after.pull.g - before.pull.g, expected.g, 1e-9);
        EXPECT_NEAR(after.pull.b - before.pull.b, expected.b, 1e-9);
    }
    EXPECT_FALSE(difference.painted(40));
}

}  // namespace
}  // namespace pantile::picture
