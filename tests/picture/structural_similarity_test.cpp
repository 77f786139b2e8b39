#include "picture/structural_similarity.h"

#include <algorithm>
#include <functional>

#include <gtest/gtest.h>

#include "picture/pictures.h"

namespace pantile::picture {
namespace {

CellColours greys(core::Size size, const std::function<int(int, int)>& shade) {
    CellColours cells{size, {}};
    for (int y = 0; y < size.height; ++y) {
        for (int x = 0; x < size.width; ++x) {
            const auto value = static_cast<std::uint8_t>(std::clamp(shade(x, y), 0, 255));
            cells.cells.emplace_back(core::toLinear(core::Rgb8{value, value, value}));
        }
    }
    return cells;
}

CellColours withoutFirstColumn(const CellColours& cells) {
    CellColours rest{{cells.size.width - 1, cells.size.height}, {}};
    for (std::size_t i = 0; i < cells.cells.size(); ++i) {
        if (i % static_cast<std::size_t>(cells.size.width) > 0)
            rest.cells.push_back(cells.cells[i]);
    }
    return rest;
}

int shadeA(int x, int y) {
    return (17 * x + 31 * y + 7 * x * y) % 256;
}

int shadeB(int x, int y) {
    return shadeA(x, y) + 4 * ((5 * x + 3 * y) % 7 - 3);
}

// Worked from the published definition in three ways that agree (a convolution in two dimensions,
// plain loops with centred moments and exact sums, a separable filter), apart from this code.
TEST(StructuralSimilarity, IsWhatTheDefinitionGives) {
    const core::Size size{16, 16};
    const CellColours a = greys(size, shadeA);
    const auto with = [&](const std::function<int(int, int)>& shade) {
        return structuralSimilarity(a, greys(size, shade)).value();
    };
    EXPECT_NEAR(with(shadeA), 1, 1e-12);
    EXPECT_NEAR(with(shadeB), 0.9940965539, 1e-9);
    EXPECT_NEAR(with([](int x, int y) { return shadeA(x, y) + 10; }), 0.9973307983, 1e-9);
    EXPECT_NEAR(with([](int x, int y) { return 255 - shadeA(x, y); }), -0.9804006117, 1e-9);
    EXPECT_NEAR(with([](int, int) { return 128; }), 0.0107613590, 1e-9);
}

TEST(StructuralSimilarity, OfFlatPicturesFollowsFromTheirShadesAlone) {
    // (2uv + C1) / (u² + v² + C1), C1 = 6.5025.
    const auto flat = [](int shade) {
        return greys({12, 14}, [shade](int, int) { return shade; });
    };
    EXPECT_NEAR(*structuralSimilarity(flat(100), flat(110)), 0.9954764441, 1e-9);
    EXPECT_NEAR(*structuralSimilarity(flat(0), flat(255)), 0.0000999900, 1e-9);
}

TEST(StructuralSimilarity, IsSymmetric) {
    const CellColours p = cellsOf(randomPixels(20, 13, 1));
    const CellColours q = cellsOf(randomPixels(20, 13, 2));
    EXPECT_DOUBLE_EQ(*structuralSimilarity(p, q), *structuralSimilarity(q, p));
}

TEST(StructuralSimilarity, LeavesOutWindowsThatAreNotWhole) {
    EXPECT_FALSE(structuralSimilarity(flatCells({10, 40}, {}), flatCells({10, 40}, {})));
    CellColours wanted = cellsOf(randomPixels(12, 11, 3));
    const CellColours shown = cellsOf(randomPixels(12, 11, 4));
    wanted.cells[12].reset();
    EXPECT_EQ(structuralSimilarity(wanted, shown),
              structuralSimilarity(withoutFirstColumn(wanted), withoutFirstColumn(shown)));
}

}  // namespace
}  // namespace pantile::picture
