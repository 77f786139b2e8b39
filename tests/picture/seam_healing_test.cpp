#include "picture/seam_healing.h"

#include <algorithm>
#include <limits>
#include <set>

#include <gtest/gtest.h>

#include "picture/seam_check.h"
#include "picture/textures.h"
#include "support/matchers.h"

namespace pantile::picture {
namespace {

using core::Grid;
using core::Palette;
using tests::isOk;

bool holdsNewIndices(const Grid& grid, const Grid& healed) {
    const std::set<core::PaletteIndex> before(grid.cells().begin(), grid.cells().end());
    return std::any_of(healed.cells().begin(), healed.cells().end(),
                       [&before](core::PaletteIndex index) { return before.count(index) == 0; });
}

TEST(SeamHealing, LaysAStripOfTheInsideOverTheSeam) {
    // Worked by hand. With an overlap of 1 the strip is two columns that lie side by side, in place
    // of columns 7 and 0. The eight greys have OKLab lightness 0 26 41 54 66 78 89 100. Columns 3
    // and 4 (89 26) beside what they replace (100 0) cost 11^2 + 26^2 and have a step of 63^2: 4766
    // in all, where each other pair costs more than 5000 at one side alone.
    const Grid grid = *Grid::create(8, 1, {0, 1, 2, 6, 1, 4, 6, 7});
    const auto healed = healSeams(grid, greyPalette(8), {HealedSeams::Vertical, 1});
    ASSERT_THAT(healed, isOk());
    EXPECT_EQ(*healed, *Grid::create(8, 1, {1, 1, 2, 6, 1, 4, 6, 6}));
}

TEST(SeamHealing, HealsTheHorizontalSeamAsTheVerticalOne) {
    const Grid grid = *Grid::create(1, 8, {0, 1, 2, 6, 1, 4, 6, 7});
    const auto healed = healSeams(grid, greyPalette(8), {HealedSeams::Horizontal, 1});
    ASSERT_THAT(healed, isOk());
    EXPECT_EQ(*healed, *Grid::create(1, 8, {1, 1, 2, 6, 1, 4, 6, 6}));
}

// All pairs of columns tried by the definition, for grids of one row and an overlap of 1.
Grid bestPairTried(const Grid& grid, const CellDifference& difference) {
    const int last = grid.width() - 1;
    Grid best = grid;
    std::int64_t least = std::numeric_limits<std::int64_t>::max();
    for (int s = 0; s < last; ++s) {
        Grid tried = grid;
        tried.set(last, 0, grid.at(s, 0));
        tried.set(0, 0, grid.at(s + 1, 0));
        const std::int64_t joints = difference.distance(tried.at(last - 1, 0), tried.at(last, 0)) +
                                    difference.distance(tried.at(0, 0), tried.at(1, 0));
        const std::int64_t before = difference.distance(grid.at(last, 0), grid.at(0, 0));
        const std::int64_t after = difference.distance(tried.at(last, 0), tried.at(0, 0));
        const std::int64_t seen = difference.squared(grid.at(last, 0), grid.at(s, 0)) +
                                  difference.squared(grid.at(0, 0), grid.at(s + 1, 0)) +
                                  difference.squared(tried.at(last, 0), tried.at(0, 0));
        if (after >= before || joints > 2 * before || seen >= least) continue;
        least = seen;
        best = tried;
    }
    return best;
}

TEST(SeamHealing, TakesTheStripThatTryingAllFinds) {
    const Palette palette = greyPalette(12);
    const CellDifference difference(palette);
    tests::Random random(11);
    int healedGrids = 0;
    for (int round = 0; round < 200; ++round) {
        const Grid grid = randomGrid({random.between(3, 12), 1}, palette.size(), random);
        const auto healed = healSeams(grid, palette, {HealedSeams::Vertical, 1});
        ASSERT_THAT(healed, isOk());
        if (*healed == grid) continue;  // smooth as it was, or no pair is better
        ++healedGrids;
        ASSERT_EQ(*healed, bestPairTried(grid, difference)) << "round " << round;
    }
    EXPECT_GT(healedGrids, 50);
}

struct Healing {
    Grid grid;
    int overlap = 0;
};

Healing randomHealing(int round, const Palette& palette, tests::Random& random) {
    const core::Size size{random.between(2, 20), random.between(2, 20)};
    const int most = std::min(size.width, size.height) / 2;
    return {round % 2 == 0 ? shingle(size, palette.size(), random)
                           : randomGrid(size, palette.size(), random),
            random.between(1, most)};
}

struct Sums {
    std::int64_t vertical = 0;
    std::int64_t horizontal = 0;
};

// How much each seam's sum falls by healing.
Sums gains(const Grid& grid, const Palette& palette, const HealOptions& options) {
    const CellDifference difference(palette);
    const Grid healed = *healSeams(grid, palette, options);
    const auto gain = [&](Seam seam) {
        return seamSum(grid, difference, seam) - seamSum(healed, difference, seam);
    };
    return {gain(Seam::Vertical), gain(Seam::Horizontal)};
}

TEST(SeamHealing, NeverMakesASeamWorse) {
    const Palette palette = greyPalette(10);
    tests::Random random(3);
    for (int round = 0; round < 60; ++round) {
        const auto [grid, overlap] = randomHealing(round, palette, random);
        const Sums both = gains(grid, palette, {HealedSeams::Both, overlap});
        ASSERT_GE(both.vertical, 0) << "round " << round;
        ASSERT_GE(both.horizontal, 0) << "round " << round;
        // One alone takes no more from the other than it gives.
        const Sums vertical = gains(grid, palette, {HealedSeams::Vertical, overlap});
        ASSERT_GE(vertical.vertical, 0) << "round " << round;
        ASSERT_GE(vertical.vertical + vertical.horizontal, 0) << "round " << round;
        const Sums horizontal = gains(grid, palette, {HealedSeams::Horizontal, overlap});
        ASSERT_GE(horizontal.horizontal, 0) << "round " << round;
        ASSERT_GE(horizontal.vertical + horizontal.horizontal, 0) << "round " << round;
    }
}

TEST(SeamHealing, CopiesCellsAndOnlyWithinTheOverlap) {
    const Palette palette = greyPalette(10);
    tests::Random random(5);
    for (int round = 0; round < 40; ++round) {
        const auto [grid, overlap] = randomHealing(round, palette, random);
        const auto healed = healSeams(grid, palette, {HealedSeams::Vertical, overlap});
        ASSERT_THAT(healed, isOk());
        ASSERT_EQ(healed->size(), grid.size());
        ASSERT_FALSE(holdsNewIndices(grid, *healed)) << "round " << round;
        for (int y = 0; y < grid.height(); ++y) {
            for (int x = overlap; x < grid.width() - overlap; ++x)
                ASSERT_EQ(healed->at(x, y), grid.at(x, y)) << "round " << round;
        }
    }
}

TEST(SeamHealing, MakesShingleRepeat) {
    const Palette palette = greyPalette(16);
    tests::Random random(8);
    for (int round = 0; round < 6; ++round) {
        const Grid grid = shingle({32, 24}, palette.size(), random);
        const auto before = checkSeams(grid, palette);
        const auto healed = healSeams(grid, palette, {HealedSeams::Both, 6});
        ASSERT_THAT(healed, isOk());
        const auto after = checkSeams(*healed, palette);
        ASSERT_THAT(after, isOk());
        EXPECT_GT(before->vertical.ratio(), 1.5) << "round " << round;
        EXPECT_LT(after->vertical.ratio(), 1.2) << "round " << round;
        EXPECT_GT(before->horizontal.ratio(), 1.5) << "round " << round;
        EXPECT_LT(after->horizontal.ratio(), 1.2) << "round " << round;
    }
}

TEST(SeamHealing, LeavesWhatRepeatsAlone) {
    const Palette palette = greyPalette(4);
    const Grid chequered = *Grid::create(4, 2, {0, 1, 0, 1, 1, 0, 1, 0});
    const auto healed = healSeams(chequered, palette);
    ASSERT_THAT(healed, isOk());
    EXPECT_EQ(*healed, chequered);
    const Grid single = *Grid::filled(1, 1, 0);
    EXPECT_EQ(*healSeams(single, palette), single);
}

TEST(SeamHealing, StopsWhenAsked) {
    std::stop_source stop;
    stop.request_stop();
    EXPECT_THAT(healSeams(gridOf({"0123"}), greyPalette(4), {}, stop.get_token()),
                tests::failsWith(core::ErrorKind::Cancelled, "stopped"));
}

TEST(SeamHealing, RefusesBadOverlapsAndStrangeIndices) {
    const Palette palette = greyPalette(4);
    const Grid grid = *Grid::create(4, 2, {0, 1, 2, 3, 0, 1, 2, 3});
    EXPECT_THAT(healSeams(grid, palette, {HealedSeams::Vertical, 3}),
                tests::failsWith(core::ErrorKind::InvalidInput, "overlap is 3, outside 0 to 2"));
    EXPECT_THAT(healSeams(grid, palette, {HealedSeams::Horizontal, 2}),
                tests::failsWith(core::ErrorKind::InvalidInput, "overlap"));
    EXPECT_THAT(healSeams(grid, palette, {HealedSeams::Both, -1}),
                tests::failsWith(core::ErrorKind::InvalidInput, "overlap"));
    EXPECT_THAT(healSeams(*Grid::filled(2, 2, 4), palette),
                tests::failsWith(core::ErrorKind::InvalidInput, "index"));
}

}  // namespace
}  // namespace pantile::picture
