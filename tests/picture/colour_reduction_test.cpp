#include "picture/colour_reduction.h"

#include <algorithm>
#include <limits>

#include <gtest/gtest.h>

#include "picture/cell_difference.h"
#include "picture/pictures.h"
#include "picture/textures.h"
#include "support/matchers.h"

namespace pantile::picture {
namespace {

using core::Grid;
using core::Palette;
using core::PaletteIndex;
using tests::isOk;

core::Rgb8 greyOf(int value) {
    return grey(value).rgb();
}

TEST(ReduceColours, DropsWhatCostsLeastByCells) {
    // Worked by hand. The eight greys 0 36 72 109 145 182 218 255 have OKLab lightness 0 26.0 40.2
    // 53.5 65.7 77.6 88.8 100. To go from four to three: the one black cell costs 26.0^2 = 678, the
    // ten of index 1 ten times as much, the one of index 5 22.4^2 = 500. It goes to white; then
    // black goes to index 1.
    const Palette palette = greyPalette(8);
    const Grid grid = gridOf({"0111111111157777777777"});
    const auto three = reduceColours(grid, palette, 3);
    ASSERT_THAT(three, isOk());
    EXPECT_EQ(three->palette, *Palette::create({greyOf(0), greyOf(36), greyOf(255)}));
    EXPECT_EQ(three->grid, gridOf({"0111111111122222222222"}));
    const auto two = reduceColours(grid, palette, 2);
    ASSERT_THAT(two, isOk());
    EXPECT_EQ(two->palette, *Palette::create({greyOf(36), greyOf(255)}));
    EXPECT_EQ(two->grid, gridOf({"0000000000011111111111"}));
    // With two cells of index 5, 1001, black goes first.
    const auto other = reduceColours(gridOf({"01111111111557777777777"}), palette, 3);
    ASSERT_THAT(other, isOk());
    EXPECT_EQ(other->palette, *Palette::create({greyOf(36), greyOf(182), greyOf(255)}));
}

TEST(ReduceColours, DropsUnusedEntriesAndKeepsTheOrder) {
    const auto reduced = reduceColours(gridOf({"7272"}), greyPalette(8), 256);
    ASSERT_THAT(reduced, isOk());
    EXPECT_EQ(reduced->palette, *Palette::create({greyOf(72), greyOf(255)}));
    EXPECT_EQ(reduced->grid, gridOf({"1010"}));
}

TEST(ReduceColours, KeepsTheLowerIndexOfEquals) {
    const Palette palette = *Palette::create({{9, 9, 9}, {200, 0, 0}, {9, 9, 9}});
    const auto reduced = reduceColours(gridOf({"012"}), palette, 2);
    ASSERT_THAT(reduced, isOk());
    EXPECT_EQ(reduced->palette, *Palette::create({{9, 9, 9}, {200, 0, 0}}));
    EXPECT_EQ(reduced->grid, gridOf({"010"}));
}

TEST(ReduceColours, CountsTheTransparentEntryOnlyIfACellIsUnpainted) {
    const Palette palette =
        *Palette::create({{0, 0, 0}, {9, 9, 9}, {10, 10, 10}, {255, 255, 255}}, PaletteIndex{1});
    const auto unpainted = reduceColours(gridOf({"012233"}), palette, 3);
    ASSERT_THAT(unpainted, isOk());
    EXPECT_EQ(unpainted->palette,
              *Palette::create({{9, 9, 9}, {10, 10, 10}, {255, 255, 255}}, PaletteIndex{0}));
    EXPECT_EQ(unpainted->grid, gridOf({"101122"}));
    const auto painted = reduceColours(gridOf({"02233"}), palette, 3);
    ASSERT_THAT(painted, isOk());
    EXPECT_EQ(painted->palette, *Palette::create({{0, 0, 0}, {10, 10, 10}, {255, 255, 255}}));
}

TEST(ReduceColours, LetsASingleColourStandTwice) {
    const auto plain = reduceColours(*Grid::filled(2, 2, 1), greyPalette(4), 2);
    ASSERT_THAT(plain, isOk());
    EXPECT_EQ(plain->palette, *Palette::create({greyOf(85), greyOf(85)}));
    const Palette palette = *Palette::create({{1, 2, 3}, {4, 5, 6}}, PaletteIndex{1});
    const auto empty = reduceColours(*Grid::filled(2, 2, 1), palette, 2);
    ASSERT_THAT(empty, isOk());
    EXPECT_EQ(empty->palette, *Palette::create({{4, 5, 6}, {4, 5, 6}}, PaletteIndex{0}));
    EXPECT_EQ(empty->grid, *Grid::filled(2, 2, 0));
}

// The sum over all cells of the squared difference to the nearest of `staying`.
std::int64_t totalWith(const std::vector<PaletteIndex>& staying, const Grid& grid,
                       const CellDifference& difference) {
    std::int64_t total = 0;
    for (const PaletteIndex index : grid.cells()) {
        std::int64_t least = std::numeric_limits<std::int64_t>::max();
        for (const PaletteIndex other : staying)
            least = std::min(least, difference.squared(index, other));
        total += least;
    }
    return total;
}

// By the definition: every colour is left out in turn, the sums counted anew.
std::vector<PaletteIndex> stayingByTrial(const Grid& grid, const CellDifference& difference,
                                         std::size_t count) {
    std::vector<PaletteIndex> staying(grid.cells().begin(), grid.cells().end());
    std::sort(staying.begin(), staying.end());
    staying.erase(std::unique(staying.begin(), staying.end()), staying.end());
    while (staying.size() > count) {
        std::vector<PaletteIndex> best;
        std::int64_t least = std::numeric_limits<std::int64_t>::max();
        for (std::size_t without = staying.size(); without-- > 0;) {
            std::vector<PaletteIndex> tried = staying;
            tried.erase(tried.begin() + static_cast<std::ptrdiff_t>(without));
            const std::int64_t total = totalWith(tried, grid, difference);
            if (total >= least) continue;
            least = total;
            best = tried;
        }
        staying = best;
    }
    return staying;
}

TEST(ReduceColours, IsWhatTryingEachColourFinds) {
    for (std::uint64_t seed = 1; seed <= 8; ++seed) {
        tests::Random random(seed);
        const Palette palette = *Palette::create(randomColours(12, seed));
        const CellDifference difference(palette);
        const Grid grid = randomGrid({8, 6}, palette.size(), random);
        const int count = random.between(2, 8);
        const auto reduced = reduceColours(grid, palette, count);
        ASSERT_THAT(reduced, isOk());
        const std::vector<PaletteIndex> staying =
            stayingByTrial(grid, difference, static_cast<std::size_t>(count));
        ASSERT_EQ(reduced->palette.size(), static_cast<int>(staying.size()));
        for (std::size_t i = 0; i < staying.size(); ++i)
            ASSERT_EQ(reduced->palette.colours()[i], palette[staying[i]]) << "seed " << seed;
        std::int64_t total = 0;
        for (std::size_t i = 0; i < grid.cellCount(); ++i)
            total += difference.squared(grid.cells()[i], staying[reduced->grid.cells()[i]]);
        ASSERT_EQ(total, totalWith(staying, grid, difference)) << "seed " << seed;
    }
}

TEST(ReduceColours, RefusesBadCountsAndStrangeIndices) {
    const Grid grid = *Grid::filled(2, 2, 0);
    EXPECT_THAT(reduceColours(grid, greyPalette(4), 1),
                tests::failsWith(core::ErrorKind::InvalidInput, "number of colours"));
    EXPECT_THAT(reduceColours(grid, greyPalette(4), 257),
                tests::failsWith(core::ErrorKind::InvalidInput, "number of colours"));
    EXPECT_THAT(reduceColours(*Grid::filled(2, 2, 4), greyPalette(4), 2),
                tests::failsWith(core::ErrorKind::InvalidInput, "index"));
}

}  // namespace
}  // namespace pantile::picture
