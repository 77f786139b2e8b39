#include "draw/sheet.h"

#include <array>

#include <gtest/gtest.h>

namespace pantile::sample_art {
namespace {

TEST(Sheet, BringsStrokesBackInWhereItWraps) {
    Sheet both(16, Tiles::Both);
    both.set(17, -1, Ink::Foam);
    EXPECT_EQ(both.at(1, 15), Ink::Foam);
    Sheet across(16, Tiles::Across);
    across.set(-1, 3, Ink::Foam);
    across.set(3, -1, Ink::Foam);
    EXPECT_EQ(across.at(15, 3), Ink::Foam);
    EXPECT_EQ(across.at(3, 15), Ink::Night);
}

TEST(Sheet, DropsStrokesOverACutEdge) {
    Sheet sheet(16, Tiles::No);
    sheet.set(16, 4, Ink::Foam);
    sheet.set(4, -1, Ink::Foam);
    EXPECT_EQ(sheet.toGrid().largestIndex(), static_cast<core::PaletteIndex>(Ink::Night));
}

TEST(Shade, TakesInksFromDarkToLight) {
    EXPECT_EQ(shade({Ink::Night, Ink::Stone, Ink::Foam}, -3.0), Ink::Night);
    EXPECT_EQ(shade({Ink::Night, Ink::Stone, Ink::Foam}, 0.5), Ink::Stone);
    EXPECT_EQ(shade({Ink::Night, Ink::Stone, Ink::Foam}, 2.0), Ink::Foam);
}

TEST(Shade, DithersTheShareOfCellsThatTheValueAsksFor) {
    int light = 0;
    for (int y = 0; y < 4; ++y)
        for (int x = 0; x < 4; ++x)
            light += shade({Ink::Night, Ink::Foam}, 0.625, {x, y}, 1.0) == Ink::Foam ? 1 : 0;
    // 0.625 of two steps is a quarter step above the border: three quarters of the cells.
    EXPECT_EQ(light, 12);
}

TEST(Line, PaintsBothEndsAndOneCellInEachColumnBetween) {
    Sheet sheet(16, Tiles::No);
    line(sheet, {2, 3}, {12, 7}, Ink::Foam);
    EXPECT_EQ(sheet.at(2, 3), Ink::Foam);
    EXPECT_EQ(sheet.at(12, 7), Ink::Foam);
    for (int x = 2; x <= 12; ++x) {
        int painted = 0;
        for (int y = 0; y < 16; ++y) painted += sheet.at(x, y) == Ink::Foam ? 1 : 0;
        EXPECT_EQ(painted, 1) << x;
    }
}

TEST(Ball, IsLighterAtTheTopLeft) {
    constexpr std::array<Ink, 3> kRamp = {Ink::Night, Ink::Stone, Ink::Foam};
    Sheet sheet(16, Tiles::No, Ink::Clear);
    ball(sheet, {8.0, 8.0}, 6.0, kRamp);
    EXPECT_EQ(sheet.at(6, 6), Ink::Foam);
    EXPECT_EQ(sheet.at(12, 11), Ink::Night);
    EXPECT_EQ(sheet.at(1, 1), Ink::Clear);
}

TEST(Stamp, SkipsDotsAndReadsLetters) {
    Sheet sheet(16, Tiles::No, Ink::Sea);
    stamp(sheet, {1, 1}, {"N.O", "_kR"});
    EXPECT_EQ(sheet.at(1, 1), Ink::Night);
    EXPECT_EQ(sheet.at(2, 1), Ink::Sea);
    EXPECT_EQ(sheet.at(3, 1), Ink::Brass);
    EXPECT_EQ(sheet.at(1, 2), Ink::Clear);
    EXPECT_EQ(sheet.at(2, 2), Ink::DeepKelp);
    EXPECT_EQ(sheet.at(3, 2), Ink::BuoyRed);
}

TEST(Outline, RunsRoundThePaintedCellsOnly) {
    Sheet sheet(16, Tiles::No, Ink::Clear);
    sheet.set(5, 5, Ink::Foam);
    outline(sheet, Ink::Night);
    EXPECT_EQ(sheet.at(5, 5), Ink::Foam);
    EXPECT_EQ(sheet.at(4, 5), Ink::Night);
    EXPECT_EQ(sheet.at(5, 6), Ink::Night);
    EXPECT_EQ(sheet.at(4, 4), Ink::Clear);
}

}  // namespace
}  // namespace pantile::sample_art
