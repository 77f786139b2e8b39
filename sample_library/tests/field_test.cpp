#include "draw/field.h"

#include <algorithm>
#include <cmath>

#include <gtest/gtest.h>

namespace pantile::sample_art {
namespace {

TEST(Field, WrapsBothWays) {
    Field field(8, 4);
    field.at(7, 3) = 2.5;
    EXPECT_EQ(field.at(-1, -1), 2.5);
    EXPECT_EQ(field.at(15, 7), 2.5);
}

TEST(LayeredNoise, StaysInTheUnitRangeAndRunsOnOverTheEdge) {
    const Field noise = layeredNoise(64, 32, {4, 4}, 3, 99);
    double largestStep = 0.0;
    for (int y = 0; y < 32; ++y) {
        for (int x = 0; x < 63; ++x) {
            EXPECT_TRUE(noise.at(x, y) >= 0.0 && noise.at(x, y) <= 1.0);
            largestStep = std::max(largestStep, std::abs(noise.at(x + 1, y) - noise.at(x, y)));
        }
    }
    for (int y = 0; y < 32; ++y)
        EXPECT_LE(std::abs(noise.at(64, y) - noise.at(63, y)), largestStep) << y;
}

TEST(NearestStone, MeasuresRoundTheWrap) {
    const std::vector<Place> places = {{1.0, 1.0}, {8.0, 8.0}};
    const StoneSpot spot = nearestStone(places, 16, 16, 15.0, 1.0);
    EXPECT_EQ(spot.stone, 0U);
    EXPECT_DOUBLE_EQ(spot.distance, 2.0);
    EXPECT_DOUBLE_EQ(spot.dx, -2.0);
}

TEST(NearestStone, IsAtTheBorderHalfWayBetweenTwoStones) {
    const std::vector<Place> places = {{4.0, 8.0}, {12.0, 8.0}};
    EXPECT_NEAR(nearestStone(places, 32, 32, 8.0, 8.0).toEdge, 0.0, 1e-12);
    EXPECT_NEAR(nearestStone(places, 32, 32, 5.0, 8.0).toEdge, 3.0, 1e-12);
}

TEST(SpreadPlaces, KeepsPlacesApart) {
    const std::vector<Place> places = spreadPlaces(64, 64, 30, 7);
    ASSERT_EQ(places.size(), 30U);
    for (std::size_t i = 0; i < places.size(); ++i) {
        std::vector<Place> others = places;
        others.erase(others.begin() + static_cast<std::ptrdiff_t>(i));
        // Even spreading of 30 places gives each about 11.7 cells; chance alone leaves pairs at 1.
        EXPECT_GT(nearestStone(others, 64, 64, places[i].x, places[i].y).distance, 5.0) << i;
    }
}

}  // namespace
}  // namespace pantile::sample_art
