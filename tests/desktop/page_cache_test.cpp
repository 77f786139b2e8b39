#include "desktop/models/page_cache.h"

#include <utility>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "support/random.h"

namespace pantile::desktop {
namespace {

using ::testing::ElementsAre;
using ::testing::Pair;

using Loads = std::vector<std::pair<std::size_t, std::size_t>>;

// Loads items that are ten times their index, and notes what was asked for.
auto loader(Loads& loads) {
    return [&loads](std::size_t first, std::size_t length) {
        loads.emplace_back(first, length);
        std::vector<std::size_t> items;
        for (std::size_t i = 0; i < length; ++i) items.push_back((first + i) * 10);
        return items;
    };
}

TEST(PageCache, LoadsAPageOnceAndTheLastOneShort) {
    PageCache<std::size_t> cache({4, 8});
    cache.reset(10);
    Loads loads;
    EXPECT_EQ(cache.at(5, loader(loads)), 50U);
    EXPECT_EQ(cache.at(4, loader(loads)), 40U);
    EXPECT_EQ(cache.at(9, loader(loads)), 90U);
    EXPECT_THAT(loads, ElementsAre(Pair(4, 4), Pair(8, 2)));
}

TEST(PageCache, HoldsNoMorePagesThanItMay) {
    PageCache<std::size_t> cache({4, 2});
    cache.reset(100);
    Loads loads;
    for (const std::size_t index : {0U, 4U, 8U, 0U}) cache.at(index, loader(loads));
    EXPECT_THAT(loads, ElementsAre(Pair(0, 4), Pair(4, 4), Pair(8, 4), Pair(0, 4)));
}

TEST(PageCache, ReadsAnewAfterReset) {
    PageCache<std::size_t> cache({4, 2});
    cache.reset(4);
    Loads loads;
    cache.at(0, loader(loads));
    cache.reset(3);
    cache.at(0, loader(loads));
    EXPECT_EQ(cache.count(), 3U);
    EXPECT_THAT(loads, ElementsAre(Pair(0, 4), Pair(0, 3)));
}

TEST(PageCache, GivesTheRightItemInAnyOrderOfAsking) {
    for (std::uint64_t seed = 1; seed <= 20; ++seed) {
        tests::Random random(seed);
        PageCache<std::size_t> cache({static_cast<std::size_t>(random.between(1, 9)),
                                      static_cast<std::size_t>(random.between(1, 5))});
        const int count = random.between(1, 200);
        cache.reset(static_cast<std::size_t>(count));
        Loads loads;
        for (int step = 0; step < 200; ++step) {
            const auto index = static_cast<std::size_t>(random.between(0, count - 1));
            ASSERT_EQ(cache.at(index, loader(loads)), index * 10) << "seed " << seed;
        }
    }
}

}  // namespace
}  // namespace pantile::desktop
