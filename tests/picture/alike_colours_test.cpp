#include "picture/alike_colours.h"

#include <set>

#include <gtest/gtest.h>

#include "support/random.h"

namespace pantile::picture {
namespace {

NoisyColour around(const NoisyColour& colour, tests::Random& random) {
    NoisyColour noisy = colour;
    for (double& value : noisy) value += random.between(-1000, 1000) / 1000.0;
    return noisy;
}

TEST(AlikeColours, GathersNoisyOnesAboutTheirMeans) {
    const std::vector<NoisyColour> colours{{0, 0, 0}, {20, 0, 0}, {20, 15, 0}, {5, 40, 60}};
    for (std::uint64_t seed = 1; seed <= 20; ++seed) {
        tests::Random random(seed);
        std::vector<NoisyColour> noisy;
        for (int i = 0; i < 200; ++i)
            noisy.push_back(around(colours[static_cast<std::size_t>(i % 4)], random));
        const std::vector<NoisyColour> means = gatherAlike(noisy);
        ASSERT_EQ(means.size(), noisy.size());
        EXPECT_EQ(std::set(means.begin(), means.end()).size(), 4U) << "seed " << seed;
        for (std::size_t i = 0; i < means.size(); ++i) {
            for (std::size_t channel = 0; channel < 3; ++channel)
                EXPECT_NEAR(means[i].at(channel), colours[i % 4].at(channel), 0.5);
        }
    }
}

TEST(AlikeColours, KeepsMoreColoursThanItMayStartWithApart) {
    // 300 colours far apart in pairs: groups are at most 256, and the nearest share one.
    std::vector<NoisyColour> colours;
    for (int i = 0; i < 300; ++i) colours.push_back({100.0 * (i / 2) + i % 2, 0, 0});
    const std::vector<NoisyColour> means = gatherAlike(colours);
    for (int i = 0; i < 300; ++i)
        EXPECT_NEAR(means[static_cast<std::size_t>(i)][0], 100.0 * (i / 2) + 0.5, 1e-9);
}

TEST(AlikeColours, OfNoneAreNone) {
    EXPECT_TRUE(gatherAlike({}).empty());
}

}  // namespace
}  // namespace pantile::picture
