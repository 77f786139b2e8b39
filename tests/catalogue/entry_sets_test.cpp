#include "catalogue/entry_sets.h"

#include <limits>

#include <gtest/gtest.h>

namespace pantile::catalogue {
namespace {

bool isRed(core::Rgb8 colour) {
    return colour.r > 200;
}

TEST(EntrySets, HoldThePassingEntriesOfEachPalette) {
    constexpr std::int64_t kFar = std::numeric_limits<std::int64_t>::max();
    EntrySets red(isRed);
    const EntryBits first{0b01};
    const EntryBits second{0b10};
    for (const std::int64_t palette : {std::int64_t{4}, kFar, -kFar}) {
        red.addPalette(palette, std::vector<std::uint8_t>{0, 0, 255, 254, 0, 0});
        EXPECT_TRUE(red.hasOneOf(palette, second)) << palette;
        EXPECT_FALSE(red.hasOneOf(palette, first)) << palette;
        EXPECT_FALSE(red.hasOneOf(palette, {})) << palette;
    }
    red.addPalette(5, std::vector<std::uint8_t>{0, 0, 255, 0, 255, 0});
    const EntryBits all{~0U};
    for (const std::int64_t none : {std::int64_t{5}, std::int64_t{6}, std::int64_t{-1}, kFar - 1}) {
        EXPECT_FALSE(red.hasOneOf(none, all)) << none;
    }
}

TEST(EntrySets, OfAForgedPaletteStayWithinBounds) {
    std::vector<std::uint8_t> colours;
    for (int i = 0; i < 300; ++i) colours.insert(colours.end(), {255, 0, 0});
    colours.push_back(255);
    EntrySets red(isRed);
    red.addPalette(1, colours);
    EXPECT_TRUE(red.hasOneOf(1, {0, 0, 0, std::uint64_t{1} << 63U}));
    EXPECT_FALSE(red.hasOneOf(1, {}));
}

}  // namespace
}  // namespace pantile::catalogue
