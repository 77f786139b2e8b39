#include "picture/dither_palette.h"

#include <gtest/gtest.h>

#include "picture/dither.h"
#include "picture/palette_builder.h"
#include "picture/picture_difference.h"
#include "picture/pictures.h"
#include "support/matchers.h"

namespace pantile::picture {
namespace {

using core::Palette;
using core::Rgb8;
using tests::failsWith;

std::vector<Rgb8> coloursOf(const CellColours& cells) {
    std::vector<Rgb8> colours;
    for (const auto& cell : cells.cells) colours.push_back(core::toRgb8(*cell));
    return colours;
}

double seenWith(const CellColours& wanted, const std::vector<Rgb8>& colours) {
    const Palette palette = *Palette::create(colours);
    const auto grid = *core::Grid::create(wanted.size.width, wanted.size.height,
                                          ditherToPalette(wanted, palette, kFloydSteinberg, 1));
    return meanPerceivedDifference(wanted, coloursShown(grid, palette));
}

TEST(DitherPalette, LooksBetterDitheredThanTheMeansOfColours) {
    double withMeans = 0;
    double withFitted = 0;
    for (std::uint64_t seed = 1; seed <= 4; ++seed) {
        const CellColours wanted = hazeCells({24, 24}, seed);
        const std::vector<Rgb8> means = chooseColours(coloursOf(wanted), 6);
        const std::vector<Rgb8> fitted = *coloursForDither(wanted, means, 0, 1);
        EXPECT_LE(fitted.size(), means.size());
        EXPECT_LT(seenWith(wanted, fitted), seenWith(wanted, means)) << seed;
        withMeans += seenWith(wanted, means);
        withFitted += seenWith(wanted, fitted);
    }
    EXPECT_LT(withFitted, 0.75 * withMeans);
}

TEST(DitherPalette, KeepsPinnedColoursInTheirPlaces) {
    const CellColours wanted = hazeCells({24, 24}, 5);
    const std::vector<Rgb8> start{{1, 2, 3}, {250, 0, 250}, {90, 90, 90}, {160, 160, 160}};
    const std::vector<Rgb8> fitted = *coloursForDither(wanted, start, 2, 1);
    EXPECT_EQ(fitted[0], start[0]);
    EXPECT_EQ(fitted[1], start[1]);
    EXPECT_NE(fitted, start);
    EXPECT_EQ(*coloursForDither(wanted, start, 4, 1), start);
}

TEST(DitherPalette, TakesNoNoticeOfUnpaintedCells) {
    CellColours wanted = hazeCells({24, 24}, 6);
    for (std::size_t i = 0; i < wanted.cells.size(); i += 5) wanted.cells[i].reset();
    EXPECT_EQ(coloursForDither(wanted, randomColours(5, 1), 0, 1)->size(), 5U);
}

TEST(DitherPalette, RefusesTooFewColoursAndCanBeStopped) {
    const CellColours wanted = hazeCells({8, 8}, 1);
    EXPECT_THAT(coloursForDither(wanted, {{0, 0, 0}}, 0, 1),
                failsWith(core::ErrorKind::InvalidInput, ""));
    std::stop_source source;
    source.request_stop();
    EXPECT_THAT(coloursForDither(wanted, randomColours(4, 1), 0, 1, {source.get_token(), {}}),
                failsWith(core::ErrorKind::Cancelled, "stopped"));
}

}  // namespace
}  // namespace pantile::picture
