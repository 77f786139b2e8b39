#include "catalogue/near_entries.h"

#include <gtest/gtest.h>

namespace pantile::catalogue {
namespace {

const core::ColourNeighbourhood kNearRed({255, 0, 0}, 3);

TEST(NearEntries, AreThoseOfEachPalette) {
    NearEntries near(kNearRed);
    near.addPalette(4, std::vector<std::uint8_t>{0, 0, 255, 254, 0, 0});
    near.addPalette(5, std::vector<std::uint8_t>{0, 0, 255, 0, 255, 0});
    const std::vector<std::uint8_t> first{0b01};
    const std::vector<std::uint8_t> second{0b10};
    EXPECT_TRUE(near.hasOne(4));
    EXPECT_TRUE(near.isPainted(4, second));
    EXPECT_FALSE(near.isPainted(4, first));
    EXPECT_FALSE(near.isPainted(4, {}));
    EXPECT_FALSE(near.hasOne(5));
    EXPECT_FALSE(near.isPainted(5, second));
    EXPECT_FALSE(near.isPainted(6, second));
}

TEST(NearEntries, OfAForgedPaletteStayWithinBounds) {
    std::vector<std::uint8_t> colours;
    for (int i = 0; i < 300; ++i) colours.insert(colours.end(), {255, 0, 0});
    colours.push_back(255);
    NearEntries near(kNearRed);
    near.addPalette(1, colours);
    std::vector<std::uint8_t> used(40, 0);
    used.back() = 255;
    EXPECT_FALSE(near.isPainted(1, used));
    used[31] = 0x80;
    EXPECT_TRUE(near.isPainted(1, used));
}

}  // namespace
}  // namespace pantile::catalogue
