#include "picture/solved_cells.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>

#include <gtest/gtest.h>

#include "picture/small_art.h"

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

double basis(int frequency, int sample) {
    const double scale = frequency == 0 ? std::sqrt(0.125) : 0.5;
    return scale * std::cos((2 * sample + 1) * frequency * std::numbers::pi / 16);
}

// One channel by the transform's definition, samples as the mean of side x side pixels.
core::CoefficientPlane planeOf(const core::Pixels& pixels, std::size_t channel, int side,
                               int step) {
    const auto sampleAt = [&](int x, int y) {
        double sum = 0;
        for (int i = 0; i < side * side; ++i)
            sum +=
                toYcc(pixels.at(x * side + i % side, y * side + i / side).rgb()).values.at(channel);
        return sum / (side * side) - (channel == 0 ? 128 : 0);
    };
    const int blocks = pixels.size.width / side / 8;
    core::CoefficientPlane plane{side, side, {blocks, blocks}, {}, {}};
    plane.steps.fill(static_cast<std::uint16_t>(step));
    for (int at = 0; at < blocks * blocks * 64; ++at) {
        const int left = at / 64 % blocks * 8;
        const int top = at / 64 / blocks * 8;
        double sum = 0;
        for (int i = 0; i < 64; ++i)
            sum += sampleAt(left + i % 8, top + i / 8) * basis(at % 8, i % 8) *
                   basis(at % 64 / 8, i / 8);
        plane.coefficients.push_back(static_cast<std::int16_t>(std::lround(sum / step)));
    }
    return plane;
}

core::CoefficientPlanes planesOf(const core::Pixels& pixels, int step) {
    return {
        pixels.size,
        {planeOf(pixels, 0, 1, step), planeOf(pixels, 1, 2, step), planeOf(pixels, 2, 2, step)}};
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
