#include "catalogue/match_list.h"

#include <gtest/gtest.h>

#include "support/random.h"

namespace pantile::catalogue {
namespace {

using core::TextureId;

TEST(MatchList, GivesEveryPageOfTheOrder) {
    tests::Random random(9);
    for (int run = 0; run < 60; ++run) {
        MatchList list;
        std::vector<MatchList::Match> sorted;
        for (int id = random.between(0, 40); id > 0; --id) {
            sorted.push_back({random.between(0, 5), id});
            list.add(sorted.back());
        }
        std::sort(sorted.begin(), sorted.end());
        for (const SortDirection direction : {SortDirection::Usual, SortDirection::Reversed}) {
            std::vector<TextureId> all;
            for (const MatchList::Match& match : sorted) all.push_back({match.id});
            if (direction == SortDirection::Reversed) std::reverse(all.begin(), all.end());
            const int offset = random.between(0, 45);
            const int limit = random.between(-1, 45);
            const auto begin = std::min<std::size_t>(static_cast<std::size_t>(offset), all.size());
            const auto count = limit < 0 ? all.size() - begin
                                         : std::min<std::size_t>(static_cast<std::size_t>(limit),
                                                                 all.size() - begin);
            const auto from = all.begin() + static_cast<std::ptrdiff_t>(begin);
            EXPECT_EQ(list.page(direction, offset, limit),
                      std::vector<TextureId>(from, from + static_cast<std::ptrdiff_t>(count)));
        }
    }
}

}  // namespace
}  // namespace pantile::catalogue
