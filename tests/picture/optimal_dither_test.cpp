#include "picture/optimal_dither.h"

#include <gtest/gtest.h>

#include "picture/dither.h"
#include "picture/picture_difference.h"
#include "picture/pictures.h"
#include "support/matchers.h"

namespace pantile::picture {
namespace {

using core::Palette;
using tests::failsWith;

TEST(OptimalDither, NeverEndsWorseThanItsStartByItsOwnMeasure) {
    for (std::uint64_t seed = 1; seed <= 6; ++seed) {
        const Palette palette = *Palette::create(randomColours(static_cast<int>(seed) + 1, seed));
        const CellColours wanted =
            seed % 2 == 0 ? hazeCells({20, 13}, seed) : cellsOf(randomPixels(13, 20, seed));
        const double strength = seed % 3 == 0 ? 0.5 : 1;
        const auto start = ditherToPalette(wanted, palette, kFloydSteinberg, strength);
        const auto cells = *optimalDither(wanted, palette, strength);
        EXPECT_LE(optimalDitherLoss(wanted, palette, cells, strength),
                  optimalDitherLoss(wanted, palette, start, strength));
    }
}

TEST(OptimalDither, LooksBetterThanErrorDiffusionFromADistance) {
    const Palette palette = *Palette::create({{0, 0, 0},
                                              {255, 0, 0},
                                              {0, 255, 0},
                                              {0, 0, 255},
                                              {255, 255, 0},
                                              {255, 0, 255},
                                              {0, 255, 255},
                                              {255, 255, 255}});
    for (std::uint64_t seed = 1; seed <= 3; ++seed) {
        const CellColours wanted = hazeCells({32, 32}, seed);
        const auto seen = [&](std::vector<core::PaletteIndex> cells) {
            const core::Grid grid = *core::Grid::create(32, 32, std::move(cells));
            return meanPerceivedDifference(wanted, coloursShown(grid, palette));
        };
        EXPECT_LT(seen(*optimalDither(wanted, palette, 1)),
                  0.9 * seen(ditherToPalette(wanted, palette, kFloydSteinberg, 1)));
    }
}

TEST(OptimalDither, GivesTheSameCellsAgain) {
    const Palette palette = *Palette::create(randomColours(9, 4));
    const CellColours wanted = hazeCells({24, 24}, 4);
    EXPECT_EQ(*optimalDither(wanted, palette, 1), *optimalDither(wanted, palette, 1));
}

TEST(OptimalDither, LeavesColoursOfThePaletteAlone) {
    const Palette palette = *Palette::create(randomColours(16, 7));
    CellColours wanted{{16, 16}, {}};
    std::vector<core::PaletteIndex> indices;
    for (int i = 0; i < 256; ++i) {
        indices.push_back(static_cast<core::PaletteIndex>(i * 7 % 16));
        wanted.cells.emplace_back(core::toLinear(palette[indices.back()]));
    }
    EXPECT_EQ(*optimalDither(wanted, palette, 1), indices);
}

TEST(OptimalDither, CanBeStopped) {
    std::stop_source source;
    source.request_stop();
    EXPECT_THAT(optimalDither(hazeCells({8, 8}, 1), *Palette::create(randomColours(4, 1)), 1,
                              {source.get_token(), {}}),
                failsWith(core::ErrorKind::Cancelled, "stopped"));
}

}  // namespace
}  // namespace pantile::picture
