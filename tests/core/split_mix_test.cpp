#include "core/split_mix.h"

#include <array>

#include <gtest/gtest.h>

namespace pantile::core {
namespace {

TEST(SplitMix64, GivesTheNumbersThatAreKnownOfIt) {
    // From memory: the first numbers from seed 1234567, as commonly given for this generator.
    SplitMix64 numbers(1234567);
    for (const std::uint64_t wanted :
         {6457827717110365317U, 3203168211198807973U, 9817491932198370423U, 4593380528125082431U,
          16408922859458223821U})
        EXPECT_EQ(numbers.next(), wanted);
}

TEST(SplitMix64, DrawsEachNumberBelowEquallyOften) {
    SplitMix64 numbers(9);
    std::array<int, 6> drawn{};
    for (int i = 0; i < 6000; ++i) ++drawn.at(numbers.placeIn(drawn.size()));
    // 1000 each are expected; six standard deviations are 173.
    for (const int count : drawn) EXPECT_NEAR(count, 1000, 173);
}

TEST(SplitMix64, DrawsAgainWhatWouldFavourSome) {
    // Of counts just above half of all numbers, almost every second draw has no place.
    constexpr std::uint64_t kCount = (std::uint64_t{1} << 63U) + 1;
    SplitMix64 numbers(3);
    SplitMix64 plain(3);
    for (int i = 0; i < 50; ++i) {
        std::uint64_t wanted = plain.next();
        while (wanted < kCount - 2) wanted = plain.next();
        EXPECT_EQ(numbers.below(kCount), wanted % kCount);
    }
    EXPECT_EQ(numbers.below(1), 0U);
}

}  // namespace
}  // namespace pantile::core
