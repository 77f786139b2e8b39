#include "draw/chance.h"

#include <cmath>
#include <numbers>

#include <gtest/gtest.h>

namespace pantile::sample_art {
namespace {

// The generator's published first numbers for the seed 1234567, from memory.
TEST(Chance, GivesThePublishedNumbers) {
    Chance chance(1234567);
    EXPECT_EQ(chance.next(), 6457827717110365317U);
    EXPECT_EQ(chance.next(), 3203168211198807973U);
    EXPECT_EQ(chance.next(), 9817491932198370423U);
}

TEST(Chance, StaysWithinItsLimits) {
    Chance chance(5);
    for (int i = 0; i < 2000; ++i) {
        const int number = chance.below(7);
        EXPECT_TRUE(number >= 0 && number < 7) << number;
        const double place = chance.between(-2.0, 3.0);
        EXPECT_TRUE(place >= -2.0 && place < 3.0) << place;
    }
}

TEST(Chance, DiffersFromPlaceToPlaceAndSeedToSeed) {
    EXPECT_NE(chanceAt(3, 4, 1), chanceAt(4, 3, 1));
    EXPECT_NE(chanceAt(3, 4, 1), chanceAt(3, 4, 2));
    EXPECT_EQ(chanceAt(-3, 4, 1), chanceAt(-3, 4, 1));
}

TEST(Wave, LiesCloseToTheSine) {
    for (int i = -400; i <= 400; ++i) {
        const double turns = i / 160.0;
        EXPECT_NEAR(wave(turns), std::sin(2.0 * std::numbers::pi * turns), 0.002) << turns;
    }
}

TEST(TurnsOf, LiesCloseToTheArcTangent) {
    for (int i = 0; i < 720; ++i) {
        const double angle = (i + 0.5) * std::numbers::pi / 360.0;
        const double turns = turnsOf(3.0 * std::cos(angle), 3.0 * std::sin(angle));
        EXPECT_NEAR(turns, angle / (2.0 * std::numbers::pi), 0.001) << i;
    }
}

TEST(Wrapped, IsNeverNegative) {
    EXPECT_EQ(wrapped(-1, 16), 15);
    EXPECT_EQ(wrapped(-32, 16), 0);
    EXPECT_EQ(wrapped(35, 16), 3);
}

TEST(SmoothStep, ClimbsFromZeroToOne) {
    EXPECT_EQ(smoothStep(2.0, 4.0, 1.0), 0.0);
    EXPECT_EQ(smoothStep(2.0, 4.0, 3.0), 0.5);
    EXPECT_EQ(smoothStep(2.0, 4.0, 9.0), 1.0);
    EXPECT_EQ(smoothStep(4.0, 2.0, 1.0), 1.0);  // downwards when the limits are turned round
}

}  // namespace
}  // namespace pantile::sample_art
