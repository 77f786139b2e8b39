#include "desktop/models/bounded_cache.h"

#include <string>

#include <gtest/gtest.h>

namespace pantile::desktop {
namespace {

TEST(BoundedCache, MakesAValueOnceWhileItIsKept) {
    BoundedCache<int, std::string> cache(2);
    int made = 0;
    const auto make = [&] {
        ++made;
        return std::string("kelp");
    };
    EXPECT_EQ(cache.get(1, make), "kelp");
    EXPECT_EQ(cache.get(1, make), "kelp");
    EXPECT_EQ(made, 1);
}

TEST(BoundedCache, DropsTheOneUsedLongestAgo) {
    BoundedCache<int, int> cache(2);
    cache.get(1, [] { return 10; });
    cache.get(2, [] { return 20; });
    cache.get(1, [] { return 11; });
    cache.get(3, [] { return 30; });
    EXPECT_EQ(cache.size(), 2U);
    EXPECT_EQ(cache.get(1, [] { return 12; }), 10) << "1 was used after 2 and had to stay";
    EXPECT_EQ(cache.get(2, [] { return 22; }), 22) << "2 had to go";
}

TEST(BoundedCache, ForgetsEverythingWhenCleared) {
    BoundedCache<int, int> cache(4);
    cache.get(1, [] { return 1; });
    cache.clear();
    EXPECT_EQ(cache.size(), 0U);
    EXPECT_EQ(cache.get(1, [] { return 2; }), 2);
}

}  // namespace
}  // namespace pantile::desktop
