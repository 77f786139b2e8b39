#include "codec/number_list.h"

#include <gtest/gtest.h>

namespace pantile::codec {
namespace {

std::string inWords(const std::vector<std::size_t>& numbers) {
    NumberList list;
    for (const std::size_t number : numbers) list.add(number);
    EXPECT_EQ(list.count(), numbers.size());
    return list.told();
}

TEST(NumberList, TellsNumbersAsRuns) {
    EXPECT_EQ(inWords({}), "");
    EXPECT_EQ(inWords({3}), "3");
    EXPECT_EQ(inWords({3, 5}), "3 and 5");
    EXPECT_EQ(inWords({3, 4}), "3 to 4");
    EXPECT_EQ(inWords({1, 3, 4, 5, 9}), "1, 3 to 5 and 9");
}

TEST(NumberList, CutsLongLists) {
    EXPECT_EQ(inWords({1, 3, 5, 7, 9, 11, 12, 13}), "1, 3, 5, 7, 9 and 3 more");
    EXPECT_EQ(inWords({1, 3, 5, 7, 9, 11}), "1, 3, 5, 7, 9 and 1 more");
}

TEST(NumberList, TakesRuns) {
    NumberList list;
    list.add(4, 3);
    list.add(2, 8191);
    EXPECT_EQ(list.count(), 8190U);
    EXPECT_EQ(list.told(), "2 to 8191");
}

}  // namespace
}  // namespace pantile::codec
