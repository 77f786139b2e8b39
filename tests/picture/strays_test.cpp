#include "picture/strays.h"

#include <gtest/gtest.h>

#include "picture/cell_difference.h"
#include "picture/textures.h"
#include "support/matchers.h"

namespace pantile::picture {
namespace {

using core::ErrorKind;
using core::Grid;
using tests::failsWith;

TEST(RemoveStrays, GivesThemTheColourOfMostCellsBeside) {
    // Worked by hand: beside the 3 lie two 1s, a 0 and a 2. The 2s are two and stay.
    const Grid grid = gridOf({"00111",  //
                              "00311",  //
                              "00221"});
    const auto cleaned = removeStrays(grid);
    ASSERT_THAT(cleaned, tests::isOk());
    EXPECT_EQ(*cleaned, gridOf({"00111",  //
                                "00111",  //
                                "00221"}));
}

TEST(RemoveStrays, PrefersTheLowerIndexOfEquals) {
    EXPECT_EQ(*removeStrays(gridOf({"22311"})), gridOf({"22111"}));
}

TEST(RemoveStrays, CountsSizeAndWays) {
    // Worked by hand: the two 1s touch at a corner; over sides they are two strays of one cell,
    // over corners one component of two.
    const Grid grid = gridOf({"0000",  //
                              "0100",  //
                              "0010",  //
                              "0000"});
    EXPECT_EQ(*removeStrays(grid, {1, Neighbours::Four}), *Grid::filled(4, 4, 0));
    EXPECT_EQ(*removeStrays(grid, {1, Neighbours::Eight}), grid);
    EXPECT_EQ(*removeStrays(grid, {2, Neighbours::Eight}), *Grid::filled(4, 4, 0));
}

TEST(RemoveStrays, CountsACellBesideOnce) {
    // Worked by hand. Beside the three 3s lie four 2s and three 1s; that one of the 1s lies beside
    // two of them does not make it two.
    EXPECT_EQ(*removeStrays(gridOf({"2211",  //
                                    "2311",  //
                                    "2331",  //
                                    "2211"}),
                            {3, Neighbours::Four}),
              gridOf({"2211",  //
                      "2211",  //
                      "2221",  //
                      "2211"}));
}

TEST(RemoveStrays, LeavesAGridOfOneColourAlone) {
    EXPECT_EQ(*removeStrays(*Grid::filled(2, 2, 5), {100, Neighbours::Four}),
              *Grid::filled(2, 2, 5));
}

TEST(RemoveStrays, LeavesNoneAndNeverMakesMoreComponents) {
    tests::Random random(31);
    for (int round = 0; round < 80; ++round) {
        const Grid grid = randomGrid({random.between(1, 14), random.between(1, 14)},
                                     random.between(1, 5), random);
        const StrayOptions options{random.between(1, 5),
                                   round % 2 == 0 ? Neighbours::Four : Neighbours::Eight};
        const auto cleaned = removeStrays(grid, options);
        ASSERT_THAT(cleaned, tests::isOk());
        const Components after(*cleaned, options.neighbours);
        ASSERT_LE(after.count(), Components(grid, options.neighbours).count()) << "round " << round;
        for (int component = 0; component < after.count() && after.count() > 1; ++component)
            ASSERT_GT(after.sizeOf(component), options.largest) << "round " << round;
        ASSERT_EQ(*removeStrays(*cleaned, options), *cleaned) << "round " << round;
    }
}

TEST(Simplify, WeighsSizeAgainstDifference) {
    // Worked by hand: the two lightest of eight even greys have OKLab lightness 88.84 and 100, so
    // they are 11.16 apart; two such cells weigh 22.32.
    const core::Palette palette = greyPalette(8);
    const Grid one = gridOf({"77677"});
    const Grid two = gridOf({"77766777"});
    EXPECT_EQ(*simplify(one, palette, 11), one);
    EXPECT_EQ(*simplify(one, palette, 12), gridOf({"77777"}));
    EXPECT_EQ(*simplify(two, palette, 22), two);
    EXPECT_EQ(*simplify(two, palette, 23), gridOf({"77777777"}));
}

TEST(Simplify, TakesTheLeastDifferentColourBeside) {
    // Worked by hand: index 5 has lightness 77.63, 11.21 below 6 and 22.37 below 7. The pair of 6s
    // that it makes would weigh 22.32.
    EXPECT_EQ(*simplify(gridOf({"777", "756", "777"}), greyPalette(8), 12),
              gridOf({"777", "766", "777"}));
}

TEST(Simplify, LeavesUnpaintedCellsUnpaintedAndPaintedPainted) {
    const core::Palette palette = *core::Palette::create(
        {{0, 0, 0}, {0, 0, 0}, {1, 1, 1}, {255, 255, 255}}, core::PaletteIndex{0});
    const Grid grid = gridOf({"11111",  //
                              "10121",  //
                              "11111",  //
                              "00000",  //
                              "00300"});
    EXPECT_EQ(*simplify(grid, palette, kMaxSimplifyLevel), gridOf({"11111",  //
                                                                   "10111",  //
                                                                   "11111",  //
                                                                   "00000",  //
                                                                   "00300"}));
}

TEST(Simplify, ChangesNothingAtLevelNought) {
    const core::Palette twice = *core::Palette::create({{9, 9, 9}, {9, 9, 9}});
    EXPECT_EQ(*simplify(gridOf({"010"}), twice, 0), gridOf({"010"}));
    EXPECT_EQ(*simplify(gridOf({"010"}), twice, 1), gridOf({"111"}));
}

// Whether a component could still take a colour beside it for less than the level.
bool hasCheapComponent(const Grid& grid, const CellDifference& difference, int level) {
    const Components components(grid, Neighbours::Four);
    bool found = false;
    for (int cell = 0; cell < static_cast<int>(grid.cellCount()); ++cell) {
        visitCellsBeside(grid.size(), cell, Neighbours::Four, [&](int beside) {
            if (components.at(cell) == components.at(beside)) return;
            const core::PaletteIndex p = grid.cells()[static_cast<std::size_t>(cell)];
            const core::PaletteIndex q = grid.cells()[static_cast<std::size_t>(beside)];
            const std::int64_t cost =
                components.sizeOf(components.at(cell)) * difference.distance(p, q);
            if (cost < level * 100) found = true;
        });
    }
    return found;
}

TEST(Simplify, StopsWhereNothingIsCheapAndNeverMakesMoreComponents) {
    const core::Palette palette = greyPalette(10);
    const CellDifference difference(palette);
    tests::Random random(41);
    int changed = 0;
    for (int round = 0; round < 60; ++round) {
        const core::Size size{random.between(1, 16), random.between(1, 16)};
        const Grid grid = round % 2 == 0 ? randomGrid(size, palette.size(), random)
                                         : shingle(size, palette.size(), random);
        const int level = random.between(0, 60);
        const auto simple = simplify(grid, palette, level);
        ASSERT_THAT(simple, tests::isOk());
        if (*simple != grid) ++changed;
        ASSERT_FALSE(hasCheapComponent(*simple, difference, level)) << "round " << round;
        ASSERT_LE(Components(*simple, Neighbours::Four).count(),
                  Components(grid, Neighbours::Four).count());
        ASSERT_EQ(*simplify(*simple, palette, level), *simple) << "round " << round;
    }
    EXPECT_GT(changed, 40);
}

TEST(Strays, RefuseWhatIsOutOfRange) {
    const core::Palette palette = greyPalette(2);
    const Grid grid = *Grid::filled(2, 2, 0);
    EXPECT_THAT(removeStrays(grid, {0, Neighbours::Four}),
                failsWith(ErrorKind::InvalidInput, "size"));
    EXPECT_THAT(removeStrays(grid, {kMaxStraySize + 1, Neighbours::Four}),
                failsWith(ErrorKind::InvalidInput, "size"));
    EXPECT_THAT(simplify(grid, palette, -1), failsWith(ErrorKind::InvalidInput, "level"));
    EXPECT_THAT(simplify(grid, palette, kMaxSimplifyLevel + 1),
                failsWith(ErrorKind::InvalidInput, "level"));
    EXPECT_THAT(simplify(*Grid::filled(2, 2, 2), palette, 1),
                failsWith(ErrorKind::InvalidInput, "index"));
}

}  // namespace
}  // namespace pantile::picture
