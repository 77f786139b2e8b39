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

TEST(RoundedDuration, IsSpoken) {
    EXPECT_EQ(spokenTime(0), "0.0 s");
    EXPECT_EQ(spokenTime(8449), "8.4 s");
    EXPECT_EQ(spokenTime(60000), "1 min 0 s");
    EXPECT_EQ(spokenTime(119500), "2 min 0 s");
}

}  // namespace
}  // namespace pantile::core
