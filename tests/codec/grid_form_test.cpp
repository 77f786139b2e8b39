#include "codec/grid_form.h"

#include <gtest/gtest.h>

#include "code_support.h"
#include "support/matchers.h"

namespace pantile::codec {
namespace {

using core::ErrorKind;
using tests::failsWith;
using tests::isOk;

TEST(GridForm, UnpacksEveryGridThatItPacked) {
    tests::Random random(1);
    int deflated = 0;
    for (int i = 0; i < 600; ++i) {
        const int colours = random.between(2, 40);
        const core::Grid grid =
            tests::randomGrid(random, {random.between(1, 40), random.between(1, 40)}, colours);
        for (const MethodChoice choice : {MethodChoice::Shortest, MethodChoice::PlainRunsOnly}) {
            const GridForm form = packGrid(grid, colours, choice);
            if (form.method == Method::DeflatedRuns) ++deflated;
            const auto back = unpackGrid(form.method, form.bytes, grid.size(), colours);
            ASSERT_THAT(back, isOk()) << "round " << i;
            ASSERT_EQ(*back, grid) << "round " << i;
        }
    }
    EXPECT_GT(deflated, 50);
}

TEST(GridForm, UnpacksTheSmallestAndTheLargestGrids) {
    tests::Random random(2);
    for (const core::Size size : {core::Size{1, 1}, {256, 1}, {1, 256}, {256, 256}}) {
        for (const int colours : {2, 15, 16, 17, 256}) {
            const core::Grid grid = tests::randomGrid(random, size, colours);
            const GridForm form = packGrid(grid, colours);
            const auto back = unpackGrid(form.method, form.bytes, size, colours);
            ASSERT_THAT(back, isOk());
            EXPECT_EQ(*back, grid) << size.width << "x" << size.height << " in " << colours;
        }
    }
}

TEST(GridForm, DeflatesOnlyWhereThatIsShorter) {
    tests::Random random(3);
    for (int i = 0; i < 200; ++i) {
        const core::Grid grid = tests::randomGrid(random, {16, 16}, 8);
        const GridForm plain = packGrid(grid, 8, MethodChoice::PlainRunsOnly);
        const GridForm shortest = packGrid(grid, 8);
        EXPECT_EQ(plain.method, Method::PlainRuns);
        if (shortest.method == Method::PlainRuns) {
            EXPECT_EQ(shortest.bytes, plain.bytes);
        } else {
            EXPECT_LT(shortest.bytes.size(), plain.bytes.size());
        }
    }
}

/// 16x16 cells that deflate well: stripes.
core::Grid stripes() {
    std::vector<core::PaletteIndex> cells;
    for (int i = 0; i < 256; ++i) cells.push_back(static_cast<core::PaletteIndex>(i / 2 % 4));
    return *core::Grid::create(16, 16, std::move(cells));
}

TEST(GridForm, RefusesDeflatedBytesThatAreCutOrFollowedByOthers) {
    GridForm form = packGrid(stripes(), 4);
    ASSERT_EQ(form.method, Method::DeflatedRuns);
    for (std::size_t length = 0; length < form.bytes.size(); ++length) {
        EXPECT_THAT(unpackGrid(form.method, std::span(form.bytes).first(length), {16, 16}, 4),
                    failsWith(ErrorKind::Corrupt, "damaged"));
    }
    form.bytes.push_back(0);
    EXPECT_THAT(unpackGrid(form.method, form.bytes, {16, 16}, 4),
                failsWith(ErrorKind::Corrupt, "damaged"));
}

TEST(GridForm, StopsInflatingAtTheStatedSize) {
    const core::Grid large = *core::Grid::create(256, 256, [] {
        std::vector<core::PaletteIndex> cells(65536);
        for (std::size_t i = 0; i < cells.size(); ++i) cells[i] = i % 2 == 0 ? 0 : 1;
        return cells;
    }());
    const GridForm form = packGrid(large, 2);
    ASSERT_EQ(form.method, Method::DeflatedRuns);
    EXPECT_THAT(unpackGrid(form.method, form.bytes, {64, 64}, 2),
                failsWith(ErrorKind::Corrupt, "more than 4096 cells"));
}

TEST(GridForm, NamesAMethodThatIsNotKnown) {
    const auto method = static_cast<Method>(3);
    const std::vector<std::uint8_t> bytes = {0x11};
    EXPECT_THAT(unpackGrid(method, bytes, {1, 1}, 2),
                failsWith(ErrorKind::Unsupported,
                          "made by a newer Pantile: its grid is packed by method 3"));
    // Modelled runs pack whole codes, never a grid by itself.
    EXPECT_THAT(unpackGrid(Method::ModelledRuns, bytes, {1, 1}, 2),
                failsWith(ErrorKind::Unsupported, "method 2"));
    EXPECT_EQ(methodName(Method::ModelledRuns), "modelled runs");
    EXPECT_EQ(methodName(method), "unknown");
    EXPECT_EQ(methodName(Method::PlainRuns), "plain runs");
    EXPECT_EQ(methodName(Method::DeflatedRuns), "deflated runs");
}

TEST(GridForm, SurvivesRandomBytes) {
    tests::Random random(5);
    for (int i = 0; i < 50000; ++i) {
        std::vector<std::uint8_t> bytes(static_cast<std::size_t>(random.between(0, 40)));
        for (auto& byte : bytes) byte = static_cast<std::uint8_t>(random.next());
        const core::Size size{random.between(1, 9), random.between(1, 9)};
        const int colours = random.between(2, 20);
        for (const Method method : {Method::PlainRuns, Method::DeflatedRuns}) {
            const auto grid = unpackGrid(method, bytes, size, colours);
            if (!grid) continue;
            EXPECT_EQ(grid->size(), size);
            EXPECT_LT(grid->largestIndex(), colours);
        }
    }
}

}  // namespace
}  // namespace pantile::codec
