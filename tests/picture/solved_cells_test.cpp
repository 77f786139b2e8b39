#include "picture/solved_cells.h"

#include <algorithm>
#include <map>

#include <gtest/gtest.h>

#include "picture/small_art.h"
#include "picture/stored_planes.h"

namespace pantile::picture {
namespace {

constexpr int kCells = 8;
constexpr int kFactor = 4;
constexpr int kPixels = kCells * kFactor;

CellSide evenSide() {
    return {{0, kFactor, 1}, kCells};
}

CellLines evenLines() {
    return {evenSide(), evenSide(), false};
}

TEST(SolvedCells, FindsColoursThatCoarseStepsHide) {
    for (std::uint64_t seed = 1; seed <= 4; ++seed) {
        const core::Picture art = smallArt(kCells, kCells, seed);
        const core::Picture large = enlargedTo(art, {kPixels, kPixels});
        const auto equations =
            cellEquations(planesOf(large.pixels, 12), large.pixels.size, evenLines());
        ASSERT_TRUE(equations);
        const std::vector<Ycc> found = solveCells(*equations);
        ASSERT_EQ(found.size(), art.pixels.pixels.size());
        std::map<std::uint8_t, core::Rgb8> shown;
        for (std::size_t i = 0; i < found.size(); ++i) {
            const core::Rgb8 colour = toRgb8(found[i]);
            const core::Rgb8 wanted = art.pixels.pixels[i].rgb();
            EXPECT_NEAR(colour.r, wanted.r, 6) << "cell " << i << ", seed " << seed;
            EXPECT_NEAR(colour.g, wanted.g, 6) << "cell " << i << ", seed " << seed;
            EXPECT_NEAR(colour.b, wanted.b, 6) << "cell " << i << ", seed " << seed;
            const auto first = shown.emplace(art.indexed->indices[i], colour).first;
            EXPECT_EQ(first->second, colour) << "cell " << i << ", seed " << seed;
        }
    }
}

TEST(SolvedCells, KeepsAFlatPictureFlat) {
    const core::Pixels pixels{{kPixels, kPixels},
                              std::vector<core::Rgba8>(kPixels * kPixels, {63, 150, 175, 255})};
    const auto equations = cellEquations(planesOf(pixels, 3), pixels.size, evenLines());
    ASSERT_TRUE(equations);
    for (const Ycc& colour : solveCells(*equations)) {
        EXPECT_NEAR(toRgb8(colour).r, 63, 2);
        EXPECT_NEAR(toRgb8(colour).g, 150, 2);
        EXPECT_NEAR(toRgb8(colour).b, 175, 2);
    }
}

TEST(CellEquations, RefusesWhatTheyAreNotOf) {
    const core::Picture large = enlargedTo(smallArt(kCells, kCells, 1), {kPixels, kPixels});
    const core::CoefficientPlanes planes = planesOf(large.pixels, 12);
    EXPECT_FALSE(cellEquations(planes, {kPixels, kPixels - 1}, evenLines()));
    CellLines late = evenLines();
    late.columns.cells = kCells - 1;  // leaves pixels in no cell
    EXPECT_FALSE(cellEquations(planes, large.pixels.size, late));
    const CellSide many{{0, 1, 1}, kPixels};
    EXPECT_FALSE(cellEquations(planes, large.pixels.size, {many, many, false}));
}

}  // namespace
}  // namespace pantile::picture
