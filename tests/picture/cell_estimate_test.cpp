#include "picture/cell_estimate.h"

#include <cmath>

#include <gtest/gtest.h>

#include "picture/small_art.h"

namespace pantile::picture {
namespace {

CellLines wholeLines(core::Size cells, int pitch) {
    return {{{0, pitch, 1}, cells.width}, {{0, pitch, 1}, cells.height}, false};
}

TEST(CellEstimate, YccThereAndBackIsTheSameColour) {
    for (const core::Rgb8 colour : randomColours(500, 3)) EXPECT_EQ(toRgb8(toYcc(colour)), colour);
    // T.871, section 7: greys have no colour differences; red has the largest of Cr.
    EXPECT_NEAR(toYcc({77, 77, 77}).values[1], 0, 1e-9);
    EXPECT_NEAR(toYcc({255, 0, 0}).values[2], 127.5, 1e-9);
}

TEST(CellEstimate, OfFlatCellsIsTheirColour) {
    const core::Picture art = smallArt(9, 7, 1);
    const CellEstimates cells =
        estimateCells(enlargedTo(art, {45, 35}).pixels, wholeLines({9, 7}, 5));
    ASSERT_EQ(cells.size, (core::Size{9, 7}));
    EXPECT_LT(cells.lumaResidual, 0.01);
    for (std::size_t i = 0; i < cells.colours.size(); ++i) {
        EXPECT_EQ(toRgb8(cells.colours[i]), art.pixels.pixels[i].rgb()) << i;
        EXPECT_NEAR(cells.alphas[i], 255, 0.5);
    }
}

TEST(CellEstimate, AveragesNoiseAndSaysHowMuchThereWas) {
    const core::Picture art = smallArt(8, 8, 2);
    core::Picture large = enlargedTo(art, {64, 64});
    for (std::size_t i = 0; i < large.pixels.pixels.size(); ++i) {
        core::Rgba8& pixel = large.pixels.pixels[i];
        const int off = (i + i / 64) % 2 == 0 ? 4 : -4;
        pixel = {static_cast<std::uint8_t>(pixel.r + off), static_cast<std::uint8_t>(pixel.g + off),
                 static_cast<std::uint8_t>(pixel.b + off), 255};
    }
    const CellEstimates cells = estimateCells(large.pixels, wholeLines({8, 8}, 8));
    EXPECT_NEAR(cells.lumaResidual, 4, 0.05);
    for (std::size_t i = 0; i < cells.colours.size(); ++i)
        EXPECT_EQ(toRgb8(cells.colours[i]), art.pixels.pixels[i].rgb()) << i;
}

// Chroma kept for every other pixel both ways and filled in between as decoders do: what that
// spreads from cell to cell is put back.
TEST(CellEstimate, PutsHalvedChromaBack) {
    const core::Picture art = smallArt(6, 6, 5);
    const int side = 18;
    const core::Pixels large = enlargedTo(art, {side, side}).pixels;
    const auto halved = [&](std::size_t channel, int x, int y) {
        double sum = 0;
        for (const int dy : {0, 1}) {
            for (const int dx : {0, 1})
                sum += toYcc(large.at(2 * x + dx, 2 * y + dy).rgb()).values.at(channel);
        }
        return sum / 4;
    };
    const auto next = [](int x) {
        return std::clamp(x % 2 == 0 ? x / 2 - 1 : x / 2 + 1, 0, side / 2 - 1);
    };
    core::Pixels spread = large;
    for (int y = 0; y < side; ++y) {
        for (int x = 0; x < side; ++x) {
            Ycc colour = toYcc(large.at(x, y).rgb());
            for (const std::size_t c : {std::size_t{1}, std::size_t{2}})
                colour.values.at(c) =
                    0.75 * (0.75 * halved(c, x / 2, y / 2) + 0.25 * halved(c, next(x), y / 2)) +
                    0.25 * (0.75 * halved(c, x / 2, next(y)) + 0.25 * halved(c, next(x), next(y)));
            const core::Rgb8 rgb = toRgb8(colour);
            spread.at(x, y) = {rgb.r, rgb.g, rgb.b, 255};
        }
    }
    const CellEstimates cells = estimateCells(spread, wholeLines({6, 6}, 3));
    double worst = 0;
    for (std::size_t i = 0; i < cells.colours.size(); ++i) {
        const Ycc wanted = toYcc(art.pixels.pixels[i].rgb());
        for (const std::size_t c : {std::size_t{1}, std::size_t{2}})
            worst = std::max(worst, std::abs(cells.colours[i].values.at(c) - wanted.values.at(c)));
    }
    // Colours that the spread chroma pushed out of 0..255 were cut there; plain means are off by
    // more than 20.
    EXPECT_LT(worst, 12);
}

}  // namespace
}  // namespace pantile::picture
