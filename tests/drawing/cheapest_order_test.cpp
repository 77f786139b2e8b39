#include "drawing/cheapest_order.h"

#include <algorithm>
#include <numeric>

#include <gtest/gtest.h>

#include "support/random.h"

namespace pantile::drawing {
namespace {

/// Costs of a thing behind a set: independent of the class, which is only told of them.
struct Costs {
    std::vector<std::vector<std::int64_t>> behind;

    Costs(tests::Random& random, std::size_t things) : behind(things) {
        for (auto& costs : behind) {
            for (std::size_t i = 0; i < std::size_t{1} << things; ++i) {
                costs.push_back(random.between(0, 50));
            }
        }
    }

    /// Of the order's first `count` things.
    std::int64_t of(const std::vector<std::size_t>& order, std::size_t count) const {
        std::int64_t sum = 0;
        Subset before = 0;
        for (std::size_t i = 0; i < count; ++i) {
            sum += behind[order[i]][before];
            before |= Subset{1} << order[i];
        }
        return sum;
    }
};

CheapestOrder told(const Costs& costs) {
    CheapestOrder orders(costs.behind.size());
    for (std::size_t thing = 0; thing < costs.behind.size(); ++thing) {
        for (Subset before = 0; before < costs.behind[thing].size(); ++before) {
            orders.raiseAt(thing, before, costs.behind[thing][before]);
        }
    }
    return orders;
}

TEST(CheapestOrder, IsTheBestOfAllOrdersAndOfAllThatLeaveThingsOut) {
    for (std::uint64_t seed = 0; seed < 60; ++seed) {
        tests::Random random(seed);
        const auto things = static_cast<std::size_t>(random.between(1, 5));
        const Costs costs(random, things);
        std::vector<std::int64_t> leftOut;
        for (std::size_t i = 0; i < things; ++i) leftOut.push_back(random.between(0, 60));
        std::vector<std::size_t> order(things);
        std::iota(order.begin(), order.end(), std::size_t{0});
        std::int64_t whole = CheapestOrder::kEndless;
        std::int64_t some = CheapestOrder::kEndless;
        do {
            whole = std::min(whole, costs.of(order, things));
            std::int64_t rest = 0;
            for (std::size_t count = things;; --count) {
                some = std::min(some, costs.of(order, count) + rest);
                if (count == 0) break;
                rest += leftOut[order[count - 1]];
            }
        } while (std::next_permutation(order.begin(), order.end()));
        const CheapestOrder orders = told(costs);
        const std::vector<std::int64_t> never(things, CheapestOrder::kEndless);
        const CheapestOrder::Found found = orders.cheapest(never);
        ASSERT_EQ(found.cost, whole) << "seed " << seed;
        ASSERT_EQ(orders.cheapest(leftOut).cost, some) << "seed " << seed;
        ASSERT_EQ(found.steps.size(), things);
        std::int64_t sum = 0;
        for (const auto& [thing, before] : found.steps) sum += costs.behind[thing][before];
        ASSERT_EQ(sum, whole) << "its steps are that order";
    }
}

TEST(CheapestOrder, KnowsThatMoreBeforeCostsNoLess) {
    CheapestOrder orders(2);
    orders.raise(0, 0, 7);
    orders.raise(1, 1, 5);
    EXPECT_EQ(orders.cheapest({CheapestOrder::kEndless, CheapestOrder::kEndless}).cost, 7)
        << "1 first costs nothing";
    orders.raise(1, 0, 5);
    EXPECT_EQ(orders.cheapest({CheapestOrder::kEndless, CheapestOrder::kEndless}).cost, 12);
    EXPECT_EQ(orders.cheapest({2, 1}).cost, 3);
}

}  // namespace
}  // namespace pantile::drawing
