#include "picture/exact_indexed.h"

#include <gtest/gtest.h>

#include "picture/pictures.h"

namespace pantile::picture {
namespace {

using core::Rgba8;

core::Picture indexedPicture(std::vector<Rgba8> table, std::vector<std::uint8_t> indices) {
    core::Pixels pixels{{static_cast<int>(indices.size()), 1}, {}};
    for (const std::uint8_t index : indices) pixels.pixels.push_back(table.at(index));
    return {pixels, core::IndexedPixels{std::move(table), std::move(indices)}};
}

TEST(ExactIndexed, KeepsOrderIndicesDoublesAndUnusedColours) {
    const auto kept = keptIndexed(
        indexedPicture({{9, 9, 9, 255}, {1, 1, 1, 0}, {9, 9, 9, 255}, {5, 6, 7, 255}}, {2, 0, 1}));
    ASSERT_TRUE(kept);
    EXPECT_EQ(kept->grid, *core::Grid::create(3, 1, {2, 0, 1}));
    EXPECT_EQ(kept->palette, *core::Palette::create({{9, 9, 9}, {1, 1, 1}, {9, 9, 9}, {5, 6, 7}},
                                                    core::PaletteIndex{1}));
}

TEST(ExactIndexed, PadsATableOfOneColour) {
    const auto kept = keptIndexed(indexedPicture({{7, 8, 9, 255}}, {0, 0}));
    ASSERT_TRUE(kept);
    EXPECT_EQ(kept->palette, *core::Palette::create({{7, 8, 9}, {7, 8, 9}}));
    const auto invisible = keptIndexed(indexedPicture({{7, 8, 9, 0}}, {0, 0}));
    ASSERT_TRUE(invisible);
    EXPECT_EQ(invisible->palette.transparent(), core::PaletteIndex{0});
}

TEST(ExactIndexed, DeclinesWhatAPaletteCannotSay) {
    EXPECT_FALSE(keptIndexed({flat(2, 2, grey(1)), std::nullopt})) << "no indices";
    EXPECT_FALSE(keptIndexed(indexedPicture({{1, 1, 1, 0}, {2, 2, 2, 0}}, {0})))
        << "two transparent entries";
    EXPECT_FALSE(keptIndexed(indexedPicture({{1, 1, 1, 255}, {2, 2, 2, 128}}, {0})))
        << "a half-transparent entry";
    EXPECT_FALSE(keptIndexed(indexedPicture({{1, 1, 1, 255}}, std::vector<std::uint8_t>(257))))
        << "too wide for a grid";
}

}  // namespace
}  // namespace pantile::picture
