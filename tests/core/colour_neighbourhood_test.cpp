#include "core/colour_neighbourhood.h"

#include <algorithm>

#include <gtest/gtest.h>

#include "core/colour_difference.h"
#include "support/random.h"

namespace pantile::core {
namespace {

Rgb8 anyColour(tests::Random& random) {
    const std::uint64_t bits = random.next();
    return {static_cast<std::uint8_t>(bits), static_cast<std::uint8_t>(bits >> 8U),
            static_cast<std::uint8_t>(bits >> 16U)};
}

/// One or two steps of each channel away, so that small distances are met too.
Rgb8 near(Rgb8 colour, int steps, tests::Random& random) {
    const auto moved = [&](std::uint8_t channel) {
        return static_cast<std::uint8_t>(
            std::clamp(channel + random.between(-steps, steps), 0, 255));
    };
    return {moved(colour.r), moved(colour.g), moved(colour.b)};
}

TEST(ColourNeighbourhood, HoldsWhatTheFormulaSays) {
    tests::Random random(83);
    int held = 0;
    for (int round = 0; round < 20000; ++round) {
        const Rgb8 centre = anyColour(random);
        const Rgb8 other =
            round % 2 == 0 ? anyColour(random) : near(centre, random.between(1, 60), random);
        const double distance = random.between(0, 400) / 10.0;
        const bool expected = ciede2000(toLab(centre), toLab(other)) <= distance;
        EXPECT_EQ(ColourNeighbourhood(centre, distance).holds(other), expected);
        held += expected ? 1 : 0;
    }
    EXPECT_GT(held, 5000);
    EXPECT_LT(held, 15000);
}

TEST(ColourNeighbourhood, OfNoDistanceHoldsTheColourAlone) {
    const ColourNeighbourhood one({10, 20, 30}, 0);
    EXPECT_TRUE(one.holds({10, 20, 30}));
    EXPECT_FALSE(one.holds({10, 20, 31}));
}

TEST(ColourNeighbourhood, OfAnyDistanceHoldsAll) {
    const ColourNeighbourhood all({0, 0, 0}, 200);
    EXPECT_TRUE(all.holds({255, 255, 255}));
    EXPECT_TRUE(all.holds({0, 0, 255}));
}

}  // namespace
}  // namespace pantile::core
