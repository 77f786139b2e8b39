#include "picture/recolour.h"

#include <gtest/gtest.h>

#include "core/colour_spaces.h"
#include "picture/pictures.h"
#include "picture/textures.h"
#include "support/matchers.h"

namespace pantile::picture {
namespace {

using core::Palette;
using core::PaletteIndex;

TEST(Recolour, KeepsUnpaintedCells) {
    const Palette palette = *Palette::create({{0, 0, 0}, {250, 0, 0}}, PaletteIndex{0});
    const Palette wanted = *Palette::create({{0, 0, 0}, {255, 0, 0}, {250, 0, 0}}, PaletteIndex{2});
    const auto result = recoloured(gridOf({"0110"}), palette, wanted);
    ASSERT_THAT(result, tests::isOk());
    EXPECT_EQ(result->grid, gridOf({"2112"}));
    EXPECT_EQ(result->palette, wanted);
}

TEST(Recolour, RefusesUnpaintedCellsWithoutATransparentEntry) {
    const Palette palette = *Palette::create({{0, 0, 0}, {250, 0, 0}}, PaletteIndex{0});
    const Palette opaque = *Palette::create({{0, 0, 0}, {255, 0, 0}});
    EXPECT_THAT(recoloured(gridOf({"111", "110"}), palette, opaque),
                tests::failsWith(core::ErrorKind::InvalidInput, "column 2, row 1 is unpainted"));
    // An entry that no cell uses is no hindrance.
    EXPECT_THAT(recoloured(gridOf({"111"}), palette, opaque), tests::isOk());
    EXPECT_THAT(recoloured(gridOf({"112"}), palette, opaque),
                tests::failsWith(core::ErrorKind::InvalidInput, "index"));
}

TEST(Recolour, IsWhatBruteForceFinds) {
    for (std::uint64_t seed = 1; seed <= 12; ++seed) {
        tests::Random random(seed);
        const std::vector<core::Rgb8> from = randomColours(30, seed);
        const std::vector<core::Rgb8> to = randomColours(12, seed + 100);
        const Palette wanted = *Palette::create(to, PaletteIndex{3});
        const core::Grid grid = randomGrid({9, 7}, 30, random);
        const auto result = recoloured(grid, *Palette::create(from), wanted);
        ASSERT_THAT(result, tests::isOk());
        for (int y = 0; y < grid.height(); ++y) {
            for (int x = 0; x < grid.width(); ++x) {
                const auto distanceTo = [&](std::size_t entry) {
                    return core::squaredDistance(core::toOkLab(from[grid.at(x, y)]),
                                                 core::toOkLab(to[entry]));
                };
                ASSERT_NE(result->grid.at(x, y), 3);
                for (std::size_t entry = 0; entry < to.size(); ++entry) {
                    if (entry == 3) continue;
                    ASSERT_LE(distanceTo(result->grid.at(x, y)), distanceTo(entry));
                }
            }
        }
    }
}

}  // namespace
}  // namespace pantile::picture
