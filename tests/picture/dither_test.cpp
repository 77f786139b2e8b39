#include "picture/dither.h"

#include <algorithm>
#include <cmath>

#include <gtest/gtest.h>

#include "picture/nearest_colour.h"
#include "picture/pictures.h"

namespace pantile::picture {
namespace {

using core::LinearRgb;
using core::Palette;

const Palette& blackAndWhite() {
    static const Palette kPalette = *Palette::create({{0, 0, 0}, {255, 255, 255}});
    return kPalette;
}

CellColours flatCells(core::Size size, LinearRgb colour) {
    return {size, std::vector<std::optional<LinearRgb>>(
                      static_cast<std::size_t>(size.width * size.height), colour)};
}

CellColours cellsOf(const core::Pixels& pixels) {
    CellColours cells{pixels.size, {}};
    for (const core::Rgba8& pixel : pixels.pixels)
        cells.cells.emplace_back(core::toLinear(pixel.rgb()));
    return cells;
}

double meanLight(const std::vector<core::PaletteIndex>& cells, const Palette& palette) {
    double sum = 0;
    for (const core::PaletteIndex index : cells) sum += core::toLinear(palette[index]).g;
    return sum / static_cast<double>(cells.size());
}

TEST(Dither, NoneTakesTheNearestColourOfEachCell) {
    for (std::uint64_t seed = 1; seed <= 10; ++seed) {
        const Palette palette = *Palette::create(randomColours(12, seed));
        const core::Pixels pixels = randomPixels(20, 20, seed + 100);
        const std::vector<core::PaletteIndex> cells = mapToPalette(cellsOf(pixels), palette);
        for (std::size_t i = 0; i < cells.size(); ++i)
            ASSERT_EQ(cells[i], NearestColour(palette).find(pixels.pixels[i].rgb()));
    }
}

TEST(Dither, OfStrengthZeroIsNoDither) {
    for (std::uint64_t seed = 1; seed <= 10; ++seed) {
        const Palette palette = *Palette::create(randomColours(12, seed));
        const CellColours cells = cellsOf(randomPixels(20, 20, seed + 100));
        EXPECT_EQ(ditherToPalette(cells, palette, kFloydSteinberg, 0),
                  mapToPalette(cells, palette));
    }
}

TEST(Dither, KeepsTheMeanOfGreys) {
    // Error that leaves the picture at its edges is all that may be missing: 9/16 of it below each
    // of 64 columns and 11/16 beside each of 64 rows. Black changes to white at 1/8 (OKLab
    // lightness 1/2), so no error is beyond 7/8.
    constexpr double kMostLost = (64 * 9.0 / 16 + 64 * 11.0 / 16) * 7.0 / 8 / (64 * 64);
    for (int level = 0; level <= 16; ++level) {
        const double light = level / 16.0;
        const CellColours cells = flatCells({64, 64}, {light, light, light});
        const double mean =
            meanLight(ditherToPalette(cells, blackAndWhite(), kFloydSteinberg, 1), blackAndWhite());
        EXPECT_NEAR(mean, light, kMostLost) << "level " << level;
    }
}

TEST(Dither, KeepsTheMeanOfARamp) {
    CellColours cells{{64, 64}, {}};
    for (int i = 0; i < 64 * 64; ++i) {
        const double light = (i % 64) / 63.0;
        cells.cells.emplace_back(LinearRgb{light, light, light});
    }
    EXPECT_NEAR(
        meanLight(ditherToPalette(cells, blackAndWhite(), kFloydSteinberg, 1), blackAndWhite()),
        0.5, 0.01);
}

TEST(Dither, MixesAcrossAGapBetweenCrowdedColours) {
    // Two darks and two lights: what they are near to says nothing of the greys between.
    const Palette palette =
        *Palette::create({{0, 0, 0}, {9, 9, 9}, {250, 250, 250}, {255, 255, 255}});
    const CellColours cells = flatCells({64, 64}, {0.5, 0.5, 0.5});
    EXPECT_NEAR(meanLight(ditherToPalette(cells, palette, kFloydSteinberg, 1), palette), 0.5, 0.02);
}

TEST(Dither, LeavesColoursOfThePaletteAlone) {
    const Palette palette = *Palette::create(randomColours(16, 7));
    CellColours cells{{16, 16}, {}};
    tests::Random random(8);
    std::vector<core::PaletteIndex> wanted;
    for (int i = 0; i < 256; ++i) {
        wanted.push_back(static_cast<core::PaletteIndex>(random.between(0, 15)));
        cells.cells.emplace_back(core::toLinear(palette[wanted.back()]));
    }
    EXPECT_EQ(ditherToPalette(cells, palette, kFloydSteinberg, 1), wanted);
}

TEST(Dither, CarriesNoErrorThroughUnpaintedCells) {
    // Left of the gap everything is mid grey, right of it black: black stays black.
    const Palette palette =
        *Palette::create({{0, 0, 0}, {255, 255, 255}, {0, 0, 0}}, core::PaletteIndex{2});
    CellColours cells{{21, 8}, {}};
    for (int i = 0; i < 21 * 8; ++i) {
        const int x = i % 21;
        if (x == 10)
            cells.cells.emplace_back();
        else
            cells.cells.emplace_back(x < 10 ? LinearRgb{0.3, 0.3, 0.3} : LinearRgb{});
    }
    const std::vector<core::PaletteIndex> indices =
        ditherToPalette(cells, palette, kFloydSteinberg, 1);
    int white = 0;
    for (int i = 0; i < 21 * 8; ++i) {
        const int x = i % 21;
        const core::PaletteIndex index = indices[static_cast<std::size_t>(i)];
        if (x >= 10) {
            EXPECT_EQ(index, x == 10 ? 2 : 0);
        } else if (index == 1) {
            ++white;
        }
    }
    EXPECT_GT(white, 10);
}

TEST(Dither, RecoversBelowColoursThatThePaletteCannotShow) {
    // Pure red cannot be made of black and white. What is carried on is bounded, so that grey below
    // it is as it would be alone again a few rows further down.
    CellColours cells{{32, 64}, {}};
    for (int i = 0; i < 32 * 64; ++i)
        cells.cells.emplace_back(i < 32 * 32 ? LinearRgb{1, 0, 0} : LinearRgb{0.5, 0.5, 0.5});
    const std::vector<core::PaletteIndex> indices =
        ditherToPalette(cells, blackAndWhite(), kFloydSteinberg, 1);
    double white = 0;
    for (std::size_t i = 32 * 40; i < indices.size(); ++i) white += indices[i];
    EXPECT_NEAR(white / (32 * 24), 0.5, 0.05);
}

TEST(Dither, NeverLeavesThePalette) {
    for (std::uint64_t seed = 1; seed <= 20; ++seed) {
        const int colours = static_cast<int>(seed % 7) + 2;
        const Palette palette = *Palette::create(randomColours(colours, seed));
        const std::vector<core::PaletteIndex> cells =
            ditherToPalette(cellsOf(randomPixels(31, 17, seed)), palette, kFloydSteinberg, 1);
        EXPECT_LT(*std::max_element(cells.begin(), cells.end()), colours);
    }
}

}  // namespace
}  // namespace pantile::picture
