#include "core/duration.h"

#include <gtest/gtest.h>

namespace pantile::core {
namespace {

TEST(RoundedDuration, HasTenthsBelowAMinute) {
    EXPECT_EQ(roundedDuration(0), (RoundedDuration{0, 0, 0}));
    EXPECT_EQ(roundedDuration(49), (RoundedDuration{0, 0, 0}));
    EXPECT_EQ(roundedDuration(50), (RoundedDuration{0, 0, 1}));
    EXPECT_EQ(roundedDuration(59'949), (RoundedDuration{0, 59, 9}));
}

TEST(RoundedDuration, NeverSaysSixtySeconds) {
    EXPECT_EQ(roundedDuration(59'950), (RoundedDuration{1, 0, 0}));
    EXPECT_EQ(roundedDuration(119'499), (RoundedDuration{1, 59, 0}));
    EXPECT_EQ(roundedDuration(119'500), (RoundedDuration{2, 0, 0}));
}

}  // namespace
}  // namespace pantile::core
