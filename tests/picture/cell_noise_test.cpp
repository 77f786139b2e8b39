#include "picture/cell_noise.h"

#include <algorithm>
#include <array>

#include <gtest/gtest.h>

#include "picture/textures.h"
#include "support/matchers.h"

namespace pantile::picture {
namespace {

using core::ErrorKind;
using core::PaletteIndex;
using tests::failsWith;

bool isIn(const std::vector<PaletteIndex>& colours, PaletteIndex index) {
    return std::find(colours.begin(), colours.end(), index) != colours.end();
}

TEST(CellNoise, ChangesExactlyTheShareWithinTheColours) {
    const core::Palette palette = greyPalette(8);
    tests::Random random(51);
    for (int round = 0; round < 60; ++round) {
        const core::Grid grid =
            randomGrid({random.between(1, 20), random.between(1, 20)}, palette.size(), random);
        const NoiseOptions options{{2, 5, 7}, random.between(0, 100), random.next()};
        const auto noisy = withCellNoise(grid, palette, options);
        ASSERT_THAT(noisy, tests::isOk());
        int chosen = 0;
        int changed = 0;
        for (std::size_t i = 0; i < grid.cellCount(); ++i) {
            const PaletteIndex before = grid.cells()[i];
            const PaletteIndex after = noisy->cells()[i];
            if (isIn(options.colours, before)) ++chosen;
            if (after == before) continue;
            ++changed;
            ASSERT_TRUE(isIn(options.colours, before) && isIn(options.colours, after));
        }
        // To the nearest whole cell, a half up.
        ASSERT_EQ(changed, (2 * chosen * options.percent + 100) / 200) << "round " << round;
    }
}

TEST(CellNoise, FollowsFromTheSeedAndNotFromTheOrderOfColours) {
    const core::Palette palette = greyPalette(8);
    const core::Grid shingle = *core::Grid::filled(12, 12, 3);
    const auto noisy = withCellNoise(shingle, palette, {{3, 5, 1}, 40, 7});
    ASSERT_THAT(noisy, tests::isOk());
    EXPECT_EQ(*withCellNoise(shingle, palette, {{1, 3, 5, 3}, 40, 7}), *noisy);
    EXPECT_NE(*withCellNoise(shingle, palette, {{1, 3, 5}, 40, 8}), *noisy);
}

TEST(CellNoise, StaysAsItIs) {
    // Worked out by a second, separate program: a texture made with a seed must come out the same
    // in every version.
    const auto noisy =
        withCellNoise(*core::Grid::filled(8, 4, 0), greyPalette(4), {{0, 1, 2, 3}, 50, 1});
    ASSERT_THAT(noisy, tests::isOk());
    EXPECT_EQ(*noisy, gridOf({"01232200",  //
                              "02011001",  //
                              "03002032",  //
                              "00300210"}));
}

TEST(CellNoise, SpreadsOverCellsAndColours) {
    const auto noisy =
        withCellNoise(*core::Grid::filled(100, 60, 0), greyPalette(4), {{0, 1, 2, 3}, 50, 2});
    ASSERT_THAT(noisy, tests::isOk());
    std::array<int, 4> counts{};
    int leftHalf = 0;
    for (int y = 0; y < 60; ++y) {
        for (int x = 0; x < 100; ++x) {
            ++counts.at(noisy->at(x, y));
            if (x < 50 && noisy->at(x, y) != 0) ++leftHalf;
        }
    }
    EXPECT_EQ(counts[0], 3000);
    // 1000 each, 1500 in each half; six standard deviations are 155 and 165 at most.
    for (const int index : {1, 2, 3})
        EXPECT_NEAR(counts.at(static_cast<std::size_t>(index)), 1000, 155);
    EXPECT_NEAR(leftHalf, 1500, 165);
}

TEST(CellNoise, RefusesBadSharesAndColours) {
    const core::Palette palette = greyPalette(4);
    const core::Grid grid = *core::Grid::filled(2, 2, 0);
    EXPECT_THAT(withCellNoise(grid, palette, {{0, 1}, 101, 1}),
                failsWith(ErrorKind::InvalidInput, "percentage"));
    EXPECT_THAT(withCellNoise(grid, palette, {{0, 1}, -1, 1}),
                failsWith(ErrorKind::InvalidInput, "percentage"));
    EXPECT_THAT(withCellNoise(grid, palette, {{1, 1}, 50, 1}),
                failsWith(ErrorKind::InvalidInput, "number of colours for noise is 1"));
    EXPECT_THAT(withCellNoise(grid, palette, {{}, 50, 1}),
                failsWith(ErrorKind::InvalidInput, "number of colours"));
    EXPECT_THAT(withCellNoise(grid, palette, {{0, 4}, 50, 1}),
                failsWith(ErrorKind::InvalidInput, "largest colour for noise is 4"));
    EXPECT_THAT(withCellNoise(*core::Grid::filled(2, 2, 4), palette, {{0, 1}, 50, 1}),
                failsWith(ErrorKind::InvalidInput, "index"));
}

}  // namespace
}  // namespace pantile::picture
