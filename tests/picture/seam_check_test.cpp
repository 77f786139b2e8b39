#include "picture/seam_check.h"

#include <gtest/gtest.h>

#include "support/matchers.h"

namespace pantile::picture {
namespace {

using core::Grid;
using core::Rgba8;
using tests::isOk;

constexpr Rgba8 kMark{214, 40, 40, 255};

// Black and white are 100 apart in CIEDE2000: both lightness, at L 0 and 100, with no chroma and a
// weight of 1 at the mean L of 50 (Sharma et al. 2005, equation 15). The rounded white of the
// colour space has a trace of chroma: a millionth of the difference.
core::Palette blackOrWhite() {
    return *core::Palette::create({{0, 0, 0}, {255, 255, 255}});
}

TEST(SeamCheck, ComparesTheSeamWithTheInside) {
    // Worked by hand. Side by side: 100, 0, 0 in the first row, 0, 0, 0 in the second, so 100 / 6
    // inside; across the vertical seam 0 - 1 and 1 - 1. One above the other: 100, 0, 0, 0 both
    // inside and across, as there are only two rows.
    const Grid grid = *Grid::create(4, 2,
                                    {0, 1, 1, 1,  //
                                     1, 1, 1, 1});
    const auto seams = checkSeams(grid, blackOrWhite());
    ASSERT_THAT(seams, isOk());
    EXPECT_NEAR(seams->vertical.across, 50, 1e-5);
    EXPECT_NEAR(seams->vertical.inside, 100.0 / 6, 1e-5);
    EXPECT_NEAR(seams->vertical.ratio(), 51 / (100.0 / 6 + 1), 1e-5);
    EXPECT_NEAR(seams->vertical.places[0], 100, 1e-5);
    EXPECT_NEAR(seams->vertical.places[1], 0, 1e-5);
    EXPECT_NEAR(seams->vertical.ratioAt(1), 1 / (100.0 / 6 + 1), 1e-5);
    EXPECT_NEAR(seams->horizontal.across, 25, 1e-5);
    EXPECT_NEAR(seams->horizontal.ratio(), 1, 1e-5);
    EXPECT_EQ(seams->horizontal.places.size(), 4U);
}

TEST(SeamCheck, IsOneForPlainAndForEvenTextures) {
    const auto plain = checkSeams(*Grid::filled(5, 3, 1), blackOrWhite());
    ASSERT_THAT(plain, isOk());
    EXPECT_EQ(plain->vertical.ratio(), 1);
    EXPECT_EQ(plain->horizontal.ratio(), 1);
    const auto chequered = checkSeams(*Grid::create(2, 2, {0, 1, 1, 0}), blackOrWhite());
    ASSERT_THAT(chequered, isOk());
    EXPECT_EQ(chequered->vertical.ratio(), 1);
    const auto single = checkSeams(*Grid::filled(1, 1, 0), blackOrWhite());
    ASSERT_THAT(single, isOk());
    EXPECT_EQ(single->vertical.ratio(), 1);
    EXPECT_EQ(single->horizontal.ratio(), 1);
}

TEST(SeamCheck, CountsUnpaintedCellsAsFar) {
    const core::Palette palette =
        *core::Palette::create({{7, 7, 7}, {7, 7, 7}}, core::PaletteIndex{1});
    const auto seams = checkSeams(*Grid::create(3, 1, {0, 0, 1}), palette);
    ASSERT_THAT(seams, isOk());
    EXPECT_EQ(seams->vertical.across, 100);
    EXPECT_EQ(seams->vertical.inside, 50);
}

TEST(SeamPicture, ShowsTheSeamInTheMiddleAndMarksIt) {
    // Worked by hand: shifted by one column and one row, and a margin of a cell around. The first
    // row's seam differs (100 against 100 / 6 inside), the second's does not.
    const Grid grid = *Grid::create(4, 2,
                                    {0, 1, 1, 1,  //
                                     1, 1, 1, 1});
    const auto pixels = seamPicture(grid, blackOrWhite(), 2);
    ASSERT_THAT(pixels, isOk());
    ASSERT_EQ(pixels->size, (core::Size{12, 8}));
    constexpr Rgba8 kBlack{0, 0, 0, 255};
    constexpr Rgba8 kWhite{255, 255, 255, 255};
    constexpr Rgba8 kNothing{0, 0, 0, 0};
    const std::vector<std::vector<Rgba8>> wanted{
        {kNothing, kNothing, kNothing, kMark, kNothing, kNothing},
        {kNothing, kWhite, kWhite, kWhite, kWhite, kNothing},
        {kMark, kWhite, kWhite, kBlack, kWhite, kMark},
        {kNothing, kNothing, kNothing, kMark, kNothing, kNothing}};
    for (int y = 0; y < 8; ++y) {
        for (int x = 0; x < 12; ++x) {
            const Rgba8 cell =
                wanted[static_cast<std::size_t>(y / 2)][static_cast<std::size_t>(x / 2)];
            EXPECT_EQ(pixels->at(x, y), cell) << x << ' ' << y;
        }
    }
}

TEST(SeamCheck, RefusesStrangeIndicesAndFactors) {
    const Grid strange = *Grid::filled(2, 2, 2);
    EXPECT_THAT(checkSeams(strange, blackOrWhite()),
                tests::failsWith(core::ErrorKind::InvalidInput, "index"));
    EXPECT_THAT(seamPicture(strange, blackOrWhite(), 1),
                tests::failsWith(core::ErrorKind::InvalidInput, "index"));
    EXPECT_THAT(seamPicture(*Grid::filled(2, 2, 0), blackOrWhite(), 65),
                tests::failsWith(core::ErrorKind::InvalidInput, "factor"));
}

}  // namespace
}  // namespace pantile::picture
