#include "draw/seams.h"

#include <gtest/gtest.h>

#include "draw/sample.h"

namespace pantile::sample_art {
namespace {

TEST(MeasureSeam, FindsTheJumpAtTheEndOfAGradient) {
    Sheet sheet(16, Tiles::Both);
    paintCells(sheet, [](int x, int) {
        return shade({Ink::Night, Ink::Slate, Ink::Stone, Ink::Mist, Ink::Foam}, x / 16.0);
    });
    EXPECT_FALSE(measureSeam(sheet, SeamAxis::Across).isSeamless());
    EXPECT_TRUE(measureSeam(sheet, SeamAxis::Down).isSeamless());
    EXPECT_EQ(measureSeam(sheet, SeamAxis::Down).overEdge, 0.0);
}

TEST(Samples, TileWithoutASeamWhereTheyAreSaidTo) {
    int tiling = 0;
    for (const Sample& sample : allSamples()) {
        if (sample.sheet.tiles() == Tiles::No) continue;
        ++tiling;
        const SeamMeasure across = measureSeam(sample.sheet, SeamAxis::Across);
        EXPECT_TRUE(across.isSeamless())
            << sample.title << " across: " << across.overEdge << " over the edge, at most "
            << across.largestInside << " inside";
        if (sample.sheet.tiles() == Tiles::Across) continue;
        const SeamMeasure down = measureSeam(sample.sheet, SeamAxis::Down);
        EXPECT_TRUE(down.isSeamless())
            << sample.title << " down: " << down.overEdge << " over the edge, at most "
            << down.largestInside << " inside";
    }
    EXPECT_GE(tiling, 20);
}

}  // namespace
}  // namespace pantile::sample_art
