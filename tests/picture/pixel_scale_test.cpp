#include "picture/pixel_scale.h"

#include <set>

#include <gtest/gtest.h>

#include "picture/small_art.h"

namespace pantile::picture {
namespace {

TEST(PixelScale, TakesEnlargedArtBackExactly) {
    for (int factor = 2; factor <= 16; ++factor) {
        const core::Picture art = smallArt(16, 16, static_cast<std::uint64_t>(factor) + 40);
        const auto found = findEnlargedArt(enlargedTo(art, {16 * factor, 16 * factor}));
        ASSERT_TRUE(found) << factor;
        EXPECT_DOUBLE_EQ(found->factor(), factor);
        EXPECT_EQ(found->small.pixels.size, art.pixels.size);
        EXPECT_EQ(found->small.pixels.pixels, art.pixels.pixels);
        EXPECT_EQ(found->small.indexed->table, art.indexed->table);
        EXPECT_EQ(found->small.indexed->indices, art.indexed->indices);
    }
}

TEST(PixelScale, TakesNearlyWholeFactorsBackExactly) {
    for (const core::Size size : {core::Size{85, 85}, {101, 101}, {130, 130}, {199, 199}}) {
        const core::Picture art = smallArt(16, 16, static_cast<std::uint64_t>(size.width));
        const auto found = findEnlargedArt(enlargedTo(art, size));
        ASSERT_TRUE(found) << size.width;
        EXPECT_EQ(found->small.pixels.pixels, art.pixels.pixels) << size.width;
    }
}

TEST(PixelScale, TakesItBackHoweverEdgesWereRounded) {
    // 7.5 pixels a cell; edges that fall into the middle of a pixel go either way.
    for (std::uint64_t seed = 1; seed <= 5; ++seed) {
        const core::Picture art = smallArt(16, 16, seed);
        tests::Random random(seed);
        std::vector<int> cells;
        for (int cell = 0; cell < 16; ++cell) {
            const int end = 15 * (cell + 1) / 2 + (cell % 2 == 0 ? random.between(0, 1) : 0);
            cells.resize(static_cast<std::size_t>(end), cell);
        }
        core::Picture large{{{120, 120}, {}}, std::nullopt};
        for (const int row : cells) {
            for (const int column : cells)
                large.pixels.pixels.push_back(art.pixels.at(column, row));
        }
        const auto found = findEnlargedArt(large);
        ASSERT_TRUE(found) << "seed " << seed;
        EXPECT_EQ(found->small.pixels.pixels, art.pixels.pixels) << "seed " << seed;
    }
}

TEST(PixelScale, KeepsTransparentCells) {
    core::Picture art = smallArt(16, 16, 8);
    for (std::size_t i = 0; i < art.pixels.pixels.size(); i += 3) art.pixels.pixels[i].a = 0;
    core::Picture large = enlargedTo(art, {80, 80});
    large.indexed.reset();
    const auto found = findEnlargedArt(large);
    ASSERT_TRUE(found);
    EXPECT_EQ(found->small.pixels.pixels, art.pixels.pixels);
    EXPECT_FALSE(found->small.indexed);
}

TEST(PixelScale, MakesOneColourOfThoseThatOnlyNoiseTellsApart) {
    for (std::uint64_t seed = 1; seed <= 5; ++seed) {
        const core::Picture art = smallArt(16, 16, seed);
        const auto found = findEnlargedArt(withNoise(enlargedTo(art, {128, 128}), 6, seed));
        ASSERT_TRUE(found) << "seed " << seed;
        EXPECT_FALSE(found->small.indexed);
        ASSERT_EQ(found->small.pixels.size, art.pixels.size);
        std::set<std::pair<core::Rgba8, core::Rgba8>> pairs;
        std::set<core::Rgba8> before;
        std::set<core::Rgba8> after;
        for (std::size_t i = 0; i < art.pixels.pixels.size(); ++i) {
            before.insert(art.pixels.pixels[i]);
            after.insert(found->small.pixels.pixels[i]);
            pairs.insert({art.pixels.pixels[i], found->small.pixels.pixels[i]});
        }
        EXPECT_EQ(pairs.size(), before.size()) << "seed " << seed;  // one to one
        EXPECT_EQ(after.size(), before.size()) << "seed " << seed;
    }
}

TEST(PixelScale, LeavesPicturesAlone) {
    EXPECT_FALSE(findEnlargedArt({randomPixels(96, 96, 1), std::nullopt}));
    EXPECT_FALSE(findEnlargedArt({flat(96, 96, grey(7)), std::nullopt}));
    // Blocks with as much inside them as between them, as a coarse lossy format leaves photographs.
    core::Picture blocks = withNoise(enlargedTo(smallArt(12, 12, 2), {96, 96}), 60, 4);
    EXPECT_FALSE(findEnlargedArt(blocks));
}

}  // namespace
}  // namespace pantile::picture
