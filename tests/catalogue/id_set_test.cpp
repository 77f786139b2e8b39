#include "catalogue/id_set.h"

#include <limits>

#include <gtest/gtest.h>

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

TEST(IdSet, MayBeEmpty) {
    IdSet ids;
    EXPECT_FALSE(ids.has(0));
    EXPECT_EQ(ids.size(), 0);
}

}  // namespace
}  // namespace pantile::catalogue
