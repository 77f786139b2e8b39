#include "catalogue/id_set.h"

#include <algorithm>
#include <array>
#include <iterator>
#include <limits>

#include <gtest/gtest.h>

#include "support/random.h"

namespace pantile::catalogue {
namespace {

constexpr std::int64_t kLast = std::numeric_limits<std::int64_t>::max();

TEST(IdSet, HasEachThatWasAddedInAnyOrder) {
    for (const std::int64_t far : {std::int64_t{40}, kLast}) {
        IdSet ids;
        for (const std::int64_t id : {far, std::int64_t{3}, std::int64_t{17}, std::int64_t{3}}) {
            ids.add(id);
        }
        EXPECT_EQ(ids.ids(), (std::vector<std::int64_t>{3, 17, far}));
        for (const std::int64_t id : {std::int64_t{3}, std::int64_t{17}, far}) {
            EXPECT_TRUE(ids.has(id)) << id;
            EXPECT_FALSE(ids.has(id - 1)) << id;
        }
        EXPECT_FALSE(ids.has(-3));
        EXPECT_FALSE(ids.has(kLast - 1));
    }
}

TEST(IdSet, OfForgedIdsStaysSmall) {
    IdSet ids;
    ids.add(-kLast);
    ids.add(kLast);
    EXPECT_TRUE(ids.has(-kLast));
    EXPECT_FALSE(ids.has(0));
}

using Ids = std::vector<std::int64_t>;

IdSet setOf(const Ids& ids) {
    IdSet set;
    for (const std::int64_t id : ids) set.add(id);
    return set;
}

// std::set_union and the like are what the sets are held against.
TEST(IdSet, UnitesIntersectsAndSubtracts) {
    tests::Random random(17);
    for (int round = 0; round < 50; ++round) {
        std::array<Ids, 2> ids;
        for (Ids& some : ids) {
            for (int i = random.between(0, 30); i > 0; --i) some.push_back(random.between(0, 300));
            for (int i = random.between(0, 3); i > 0; --i)
                some.push_back(kLast - random.between(0, 4));
            std::sort(some.begin(), some.end());
            some.erase(std::unique(some.begin(), some.end()), some.end());
        }
        const auto& [a, b] = ids;
        Ids expected;
        std::set_union(a.begin(), a.end(), b.begin(), b.end(), std::back_inserter(expected));
        IdSet set = setOf(a);
        set.unite(setOf(b));
        EXPECT_EQ(set.ids(), expected);
        expected.clear();
        std::set_intersection(a.begin(), a.end(), b.begin(), b.end(), std::back_inserter(expected));
        set = setOf(a);
        set.intersect(setOf(b));
        EXPECT_EQ(set.ids(), expected);
        expected.clear();
        std::set_difference(a.begin(), a.end(), b.begin(), b.end(), std::back_inserter(expected));
        set = setOf(a);
        set.subtract(setOf(b));
        EXPECT_EQ(set.ids(), expected);
    }
}

TEST(IdSet, TakesAndGivesRunsOf64) {
    constexpr std::int64_t kLastRun = kLast - 63;
    for (const std::int64_t first : {std::int64_t{0}, std::int64_t{640}, kLastRun, -kLast - 1}) {
        constexpr std::uint64_t kBits = 0x8000000000000005;
        IdSet set;
        set.addRun(first, kBits);
        EXPECT_EQ(set.ids(), (Ids{first, first + 2, first + 63}));
        EXPECT_EQ(set.run(first), kBits);
        EXPECT_EQ(set.run(128), 0U);
    }
}

TEST(IdSet, MayBeEmpty) {
    IdSet ids;
    EXPECT_FALSE(ids.has(0));
    EXPECT_EQ(ids.size(), 0);
}

}  // namespace
}  // namespace pantile::catalogue
