#include "catalogue/match_list.h"

#include <gtest/gtest.h>

#include "support/random.h"

namespace pantile::catalogue {
namespace {

using core::TextureId;

/// By sorting all.
std::vector<TextureId> pageOf(std::vector<MatchList::Match> matches, SortDirection direction,
                              int offset, int limit) {
    std::sort(matches.begin(), matches.end());
    if (direction == SortDirection::Reversed) std::reverse(matches.begin(), matches.end());
    std::vector<TextureId> ids;
    for (int i = offset; i < static_cast<int>(matches.size()); ++i) {
        if (limit >= 0 && i >= offset + limit) break;
        ids.push_back({matches[static_cast<std::size_t>(i)].id});
    }
    return ids;
}

TEST(MatchList, GivesEveryPageOfTheOrder) {
    tests::Random random(9);
    for (int run = 0; run < 60; ++run) {
        std::vector<MatchList::Match> matches;
        for (int id = random.between(0, 400); id > 0; --id) {
            matches.push_back({random.between(0, 5), id});
        }
        for (const SortDirection direction : {SortDirection::Usual, SortDirection::Reversed}) {
            const int offset = random.between(0, 45);
            const int limit = random.between(-1, 45);
            MatchList list(direction, offset, limit);
            for (const MatchList::Match& match : matches) list.add(match);
            EXPECT_EQ(list.page(), pageOf(matches, direction, offset, limit));
        }
    }
}

TEST(MatchList, TakesTheLargestPageThereMayBe) {
    constexpr std::int64_t kLargest = std::numeric_limits<std::int64_t>::max();
    MatchList list(SortDirection::Usual, kLargest, kLargest);
    list.add({1, 1});
    EXPECT_TRUE(list.page().empty());
}

}  // namespace
}  // namespace pantile::catalogue
