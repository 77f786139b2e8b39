#include "picture/blue_noise.h"

#include <algorithm>

#include <gtest/gtest.h>

#include "picture/void_and_cluster.h"

namespace pantile::picture {
namespace {

TEST(BlueNoise, IsWhatItsGeneratorMakes) {
    tests::VoidAndCluster generator(tests::kBlueNoiseSide, tests::kBlueNoiseSeed);
    const auto ranks = blueNoise().ranks;
    EXPECT_EQ(std::vector<std::uint16_t>(ranks.begin(), ranks.end()), generator.ranks());
}

TEST(BlueNoise, HasEveryRankOnce) {
    std::vector<std::uint16_t> ranks(blueNoise().ranks.begin(), blueNoise().ranks.end());
    std::sort(ranks.begin(), ranks.end());
    for (std::size_t i = 0; i < ranks.size(); ++i) ASSERT_EQ(ranks[i], i);
}

// The least squared distance on the torus between two of the places that fill up first.
int leastDistance(const ThresholdMask& mask, int first) {
    int least = mask.side * mask.side;
    for (int i = 0; i < mask.count(); ++i) {
        if (mask.ranks[static_cast<std::size_t>(i)] >= first) continue;
        for (int j = 0; j < i; ++j) {
            if (mask.ranks[static_cast<std::size_t>(j)] >= first) continue;
            const int dx = std::abs(i % mask.side - j % mask.side);
            const int dy = std::abs(i / mask.side - j / mask.side);
            const int x = std::min(dx, mask.side - dx);
            const int y = std::min(dy, mask.side - dy);
            least = std::min(least, x * x + y * y);
        }
    }
    return least;
}

TEST(BlueNoise, KeepsDotsApart) {
    // n dots as far apart as can be lie 64 * sqrt(1.155 / n) apart; dots at random nearly touch.
    EXPECT_GE(leastDistance(blueNoise(), 41), 6 * 6);
    EXPECT_GE(leastDistance(blueNoise(), 410), 2 * 2);
}

}  // namespace
}  // namespace pantile::picture
