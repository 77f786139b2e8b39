#include "picture/picture_difference.h"

#include <gtest/gtest.h>

#include "core/colour_difference.h"
#include "picture/pictures.h"

namespace pantile::picture {
namespace {

double between(core::LinearRgb p, core::LinearRgb q) {
    return core::ciede2000(core::toLab(core::toXyz(p)), core::toLab(core::toXyz(q)));
}

TEST(PictureDifference, OfFlatPicturesIsThatOfTheirColours) {
    const core::LinearRgb p{0.2, 0.4, 0.1};
    const core::LinearRgb q{0.3, 0.3, 0.2};
    const CellColours flatP = flatCells({12, 7}, p);
    const CellColours flatQ = flatCells({12, 7}, q);
    EXPECT_NEAR(meanDifference(flatP, flatQ), between(p, q), 1e-9);
    EXPECT_NEAR(meanPerceivedDifference(flatP, flatQ), between(p, q), 1e-9);
    EXPECT_EQ(meanPerceivedDifference(flatP, flatP), 0);
}

TEST(PictureDifference, OfAChequeredPictureVanishesFromADistance) {
    CellColours chequered{{40, 40}, {}};
    for (int i = 0; i < 1600; ++i) {
        const double light = (i / 40 + i % 40) % 2;
        chequered.cells.emplace_back(core::LinearRgb{light, light, light});
    }
    const CellColours grey = flatCells({40, 40}, {0.5, 0.5, 0.5});
    EXPECT_GT(meanDifference(grey, chequered), 20);
    EXPECT_LT(meanPerceivedDifference(grey, chequered), 0.5);
}

TEST(PictureDifference, CountsCellsThatAreThereInBoth) {
    CellColours wanted = flatCells({4, 1}, {0, 0, 0});
    CellColours shown = flatCells({4, 1}, {1, 1, 1});
    shown.cells[1] = wanted.cells[1];
    wanted.cells[2].reset();
    shown.cells[3].reset();
    EXPECT_NEAR(meanDifference(wanted, shown), between({0, 0, 0}, {1, 1, 1}) / 2, 1e-9);
    EXPECT_EQ(meanDifference(flatCells({1, 1}, {}), {{1, 1}, {std::nullopt}}), 0);
}

TEST(PictureDifference, SeesWhatATextureShows) {
    const auto palette = *core::Palette::create({{255, 0, 0}, {0, 0, 0}}, core::PaletteIndex{1});
    const CellColours shown = coloursShown(*core::Grid::create(2, 1, {0, 1}), palette);
    EXPECT_EQ(shown.cells[0]->r, 1);
    EXPECT_FALSE(shown.cells[1]);
}

}  // namespace
}  // namespace pantile::picture
