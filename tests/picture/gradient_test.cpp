#include "picture/gradient.h"

#include <algorithm>
#include <array>
#include <map>

#include "picture/cell_art.h"
#include "picture/path.h"
#include "picture/rectangle.h"
#include "support/matchers.h"

namespace pantile::picture {
namespace {

using core::ErrorKind;
using core::Grid;
using tests::failsWith;
using tests::isOk;

CellSet everything(core::Size size) {
    return filledRectangle(size, {0, 0, size.width - 1, size.height - 1});
}

Grid gradientOver(core::Size size, const Gradient& gradient) {
    auto grid = withGradient(*Grid::filled(size.width, size.height, 9), everything(size), gradient);
    EXPECT_THAT(grid, isOk());
    return *grid;
}

// Worked by hand: cell x is 8 x / 64 of the way, and row 0 of the matrix is 0 32 8 40 2 34 10 42.
// So 0 < 0.5, 8 < 32.5 and 24 < 40.5 keep the first colour; 16, 32, 40, 48 and 56 of 64 pass
// theirs.
TEST(Gradient, OneRowAsWorkedByHand) {
    EXPECT_EQ(artOf(gradientOver({9, 1}, {{0, 0}, {8, 0}, {0, 1}})), (Art{"001011111"}));
}

// B. E. Bayer 1973, the 8x8 matrix as it is usually printed.
constexpr std::array<std::array<int, 8>, 8> kBayer = {{{0, 32, 8, 40, 2, 34, 10, 42},
                                                       {48, 16, 56, 24, 50, 18, 58, 26},
                                                       {12, 44, 4, 36, 14, 46, 6, 38},
                                                       {60, 28, 52, 20, 62, 30, 54, 22},
                                                       {3, 35, 11, 43, 1, 33, 9, 41},
                                                       {51, 19, 59, 27, 49, 17, 57, 25},
                                                       {15, 47, 7, 39, 13, 45, 5, 37},
                                                       {63, 31, 55, 23, 61, 29, 53, 21}}};

// Each cell by itself, in fractions, against the printed table.
TEST(Gradient, EveryCellFollowsThePrintedMatrix) {
    const core::Point from{3, 5};
    const core::Point to{31, 17};
    const Grid grid = gradientOver({40, 24}, {from, to, {4, 2, 7}});
    const std::array<int, 3> colours = {4, 2, 7};
    for (int y = 0; y < 24; ++y) {
        for (int x = 0; x < 40; ++x) {
            const double part =
                (28.0 * (x - from.x) + 12.0 * (y - from.y)) / (28.0 * 28.0 + 12.0 * 12.0);
            const double place = std::clamp(part, 0.0, 1.0) * 2;
            const auto before = static_cast<std::size_t>(std::min(place, 1.0));
            const double threshold =
                (kBayer.at(static_cast<std::size_t>(y % 8)).at(static_cast<std::size_t>(x % 8)) +
                 0.5) /
                64;
            const bool next = place - static_cast<double>(before) > threshold;
            EXPECT_EQ(grid.at(x, y), colours.at(next ? before + 1 : before)) << x << "," << y;
        }
    }
}

TEST(Gradient, BeginsAndEndsWithItsFirstAndLastColour) {
    const Grid grid = gradientOver({24, 8}, {{8, 0}, {15, 0}, {1, 2, 3}});
    for (int y = 0; y < 8; ++y) {
        for (int x = 0; x <= 8; ++x) EXPECT_EQ(grid.at(x, y), 1);
        for (int x = 15; x < 24; ++x) EXPECT_EQ(grid.at(x, y), 3);
    }
}

TEST(Gradient, EveryColourHasItsShare) {
    std::map<int, int> counts;
    const Grid grid = gradientOver({256, 64}, {{0, 0}, {255, 0}, {0, 1, 2}});
    for (const core::PaletteIndex cell : grid.cells()) ++counts[cell];
    EXPECT_EQ(counts.size(), 3U);
    EXPECT_NEAR(counts[0], 256 * 64 / 4, 64);
    EXPECT_NEAR(counts[1], 256 * 64 / 2, 64);
    EXPECT_NEAR(counts[2], 256 * 64 / 4, 64);
}

TEST(Gradient, LeavesTheOtherCellsAlone) {
    const Grid grid = gridOf({"8888", "8888"});
    const auto result =
        withGradient(grid, filledRectangle(grid.size(), {1, 1, 2, 1}), {{1, 0}, {2, 0}, {0, 1}});
    ASSERT_THAT(result, isOk());
    EXPECT_EQ(artOf(*result), (Art{"8888", "8018"}));
}

TEST(Gradient, ThatGoesNowhereIsRefused) {
    const Grid grid = gridOf({"00"});
    const auto refused = [&](const Gradient& gradient) {
        return withGradient(grid, everything(grid.size()), gradient);
    };
    EXPECT_THAT(refused({{1, 0}, {1, 0}, {0, 1}}),
                failsWith(ErrorKind::InvalidInput, "begins and ends at the same place"));
    EXPECT_THAT(refused({{0, 0}, {1, 0}, {1}}),
                failsWith(ErrorKind::InvalidInput, "the gradient's colours is 1"));
    EXPECT_THAT(refused({{0, 0}, {1, 0}, std::vector<core::PaletteIndex>(257)}),
                failsWith(ErrorKind::InvalidInput, "is 257"));
    EXPECT_THAT(refused({{0, 0}, {1, kMaxCoordinate + 1}, {0, 1}}),
                failsWith(ErrorKind::InvalidInput, "4097"));
    const int far = kMaxCoordinate;
    EXPECT_THAT(refused({{-far, -far}, {far, far}, std::vector<core::PaletteIndex>(256)}), isOk());
}

}  // namespace
}  // namespace pantile::picture
