#include "picture/boundary_cut.h"

#include <cstdlib>

#include <gtest/gtest.h>

#include "support/random.h"

namespace pantile::picture {
namespace {

using core::Size;
using Errors = std::vector<std::int64_t>;

std::int64_t errorAt(const Errors& errors, Size overlap, int x, int y) {
    return errors[static_cast<std::size_t>(y * overlap.width + x)];
}

// Every path in the order of its columns from the top; the first of the cheapest stays.
void tryPathsFrom(std::vector<int>& columns, std::int64_t sum, const Errors& errors, Size overlap,
                  BoundaryCut& best) {
    const int y = static_cast<int>(columns.size());
    if (y == overlap.height) {
        const bool closed = std::abs(columns.back() - columns.front()) <= 1;
        if (closed && (best.columns.empty() || sum < best.error)) best = {columns, sum};
        return;
    }
    for (int x = 0; x < overlap.width; ++x) {
        if (y > 0 && std::abs(x - columns.back()) > 1) continue;
        columns.push_back(x);
        tryPathsFrom(columns, sum + errorAt(errors, overlap, x, y), errors, overlap, best);
        columns.pop_back();
    }
}

BoundaryCut bruteForce(const Errors& errors, Size overlap) {
    BoundaryCut best;
    std::vector<int> columns;
    tryPathsFrom(columns, 0, errors, overlap, best);
    return best;
}

TEST(BoundaryCut, FollowsTheLeastDifference) {
    // Worked by hand: the way over 1, 0, 2, 0 costs 3; it ends a column from where it began.
    const Errors errors{9, 1, 9,  //
                        9, 9, 0,  //
                        9, 9, 2,  //
                        9, 9, 0};
    const auto cut = closedBoundaryCut(errors, {3, 4});
    ASSERT_TRUE(cut);
    EXPECT_EQ(cut->columns, (std::vector<int>{1, 2, 2, 2}));
    EXPECT_EQ(cut->error, 3);
    EXPECT_TRUE(closedBoundaryCut(errors, {3, 4}, 4));
    EXPECT_FALSE(closedBoundaryCut(errors, {3, 4}, 3));
}

TEST(BoundaryCut, EndsBesideWhereItBegan) {
    // Worked by hand: straight down the zeros would cost nothing, but ends two columns off.
    const auto cut = closedBoundaryCut(Errors{0, 5, 9,   //
                                              9, 0, 9,   //
                                              9, 3, 0},  //
                                       {3, 3});
    ASSERT_TRUE(cut);
    EXPECT_EQ(cut->columns, (std::vector<int>{0, 1, 1}));
    EXPECT_EQ(cut->error, 3);
}

TEST(BoundaryCut, PrefersTheLowerColumnOfEquals) {
    const auto cut = closedBoundaryCut(Errors(12, 7), {4, 3});
    ASSERT_TRUE(cut);
    EXPECT_EQ(cut->columns, (std::vector<int>{0, 0, 0}));
    EXPECT_EQ(cut->error, 21);
}

TEST(BoundaryCut, IsWhatTryingAllPathsFinds) {
    tests::Random random(4);
    for (int round = 0; round < 300; ++round) {
        const Size overlap{random.between(1, 5), random.between(1, 6)};
        Errors errors;
        // Few values, so that there are many ties.
        for (int i = 0; i < overlap.width * overlap.height; ++i)
            errors.push_back(random.between(0, 4));
        const auto cut = closedBoundaryCut(errors, overlap);
        const BoundaryCut wanted = bruteForce(errors, overlap);
        ASSERT_TRUE(cut);
        ASSERT_EQ(cut->error, wanted.error) << "round " << round;
        ASSERT_EQ(cut->columns, wanted.columns) << "round " << round;
    }
}

}  // namespace
}  // namespace pantile::picture
