#include "picture/dither.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <set>

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

constexpr std::array kDiffusions = {Dither::FloydSteinberg, Dither::JarvisJudiceNinke,
                                    Dither::Stucki,         Dither::Atkinson,
                                    Dither::Sierra,         Dither::Burkes};
constexpr std::array kOrdered = {Dither::Bayer2, Dither::Bayer4, Dither::Bayer8, Dither::BlueNoise};

std::vector<Dither> everyDither() {
    std::vector<Dither> all{Dither::None};
    all.insert(all.end(), kDiffusions.begin(), kDiffusions.end());
    all.insert(all.end(), kOrdered.begin(), kOrdered.end());
    all.push_back(Dither::Optimal);
    return all;
}

TEST(Dither, OfStrengthZeroIsNoDither) {
    for (const Dither dither : everyDither()) {
        for (std::uint64_t seed = 1; seed <= 3; ++seed) {
            const Palette palette = *Palette::create(randomColours(12, seed));
            const CellColours cells = cellsOf(randomPixels(20, 20, seed + 100));
            const auto mapped = mapToPalette(cells, palette);
            EXPECT_EQ(*dithered(cells, palette, dither, 0), mapped);
            EXPECT_EQ(*dithered(cells, palette, Dither::None, 1), mapped);
        }
    }
}

TEST(Dither, DiffersByItsName) {
    // A ramp of colours: every dither gives other cells than every other.
    const Palette palette = *Palette::create(randomColours(6, 3));
    CellColours cells{{32, 32}, {}};
    for (int i = 0; i < 32 * 32; ++i)
        cells.cells.emplace_back(LinearRgb{(i % 32) / 31.0, (i / 32) / 31.0, 0.3});
    std::set<std::vector<core::PaletteIndex>> seen;
    for (const Dither dither : everyDither()) seen.insert(*dithered(cells, palette, dither, 1));
    EXPECT_EQ(seen.size(), everyDither().size());
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

TEST(Dither, KeepsTheMeanOfAGreyRampByEveryMeansButOne) {
    // Atkinson's drops a quarter of every error on purpose.
    CellColours cells{{64, 64}, {}};
    for (int i = 0; i < 64 * 64; ++i) {
        const double light = (i % 64) / 63.0;
        cells.cells.emplace_back(LinearRgb{light, light, light});
    }
    for (const Dither dither : everyDither()) {
        if (dither == Dither::None || dither == Dither::Atkinson) continue;
        EXPECT_NEAR(meanLight(*dithered(cells, blackAndWhite(), dither, 1), blackAndWhite()), 0.5,
                    0.012)
            << static_cast<int>(dither);
    }
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

TEST(Dither, NeverLeavesThePaletteAndPaintsWhatIsPaintedAlone) {
    for (std::uint64_t seed = 1; seed <= 6; ++seed) {
        std::vector<core::Rgb8> colours = randomColours(static_cast<int>(seed) + 1, seed);
        colours.emplace_back();
        const auto transparent = static_cast<core::PaletteIndex>(colours.size() - 1);
        const Palette palette = *Palette::create(colours, transparent);
        CellColours wanted = cellsOf(randomPixels(31, 17, seed));
        for (std::size_t i = 0; i < wanted.cells.size(); i += 7) wanted.cells[i].reset();
        for (const Dither dither : everyDither()) {
            const auto cells = *dithered(wanted, palette, dither, 1);
            for (std::size_t i = 0; i < cells.size(); ++i) {
                ASSERT_EQ(cells[i] == transparent, i % 7 == 0);
                ASSERT_LE(cells[i], transparent);
            }
        }
    }
}

}  // namespace
}  // namespace pantile::picture
