#include "picture/bounded_cells.h"

#include <algorithm>

#include <gtest/gtest.h>

#include "picture/small_art.h"
#include "picture/stored_planes.h"
#include "support/random.h"

namespace pantile::picture {
namespace {

constexpr int kBoundedCells = 8;
constexpr int kBoundedFactor = 4;
constexpr int kBoundedPixels = kBoundedCells * kBoundedFactor;
constexpr int kStep = 12;

struct Stored {
    std::array<CellEquations, 3> equations;
    CellGroups groups;  // as they were before they were stored
    std::size_t count = 0;
};

Stored storedArt(const core::Picture& art) {
    const core::Picture large = enlargedTo(art, {kBoundedPixels, kBoundedPixels});
    const CellSide side{{0, kBoundedFactor, 1}, kBoundedCells};
    Stored stored{
        *cellEquations(planesOf(large.pixels, kStep), large.pixels.size, {side, side, false}),
        {art.indexed->indices.begin(), art.indexed->indices.end()},
        0};
    stored.count = renumber(stored.groups);
    return stored;
}

Stored storedArt(std::uint64_t seed) {
    return storedArt(smallArt(kBoundedCells, kBoundedCells, seed));
}

// One cell has a shade of its own; the group that it hardly differs from comes with it.
Stored storedShade(std::uint64_t seed, std::size_t cell, std::size_t& alike) {
    core::Picture art = smallArt(kBoundedCells, kBoundedCells, seed);
    art.indexed->indices[cell] = 6;
    art.pixels.pixels[cell] = {236, 182, 69, 255};
    Stored stored = storedArt(art);
    const auto near = std::find(art.indexed->indices.begin(), art.indexed->indices.end(), 4);
    alike = stored.groups[static_cast<std::size_t>(near - art.indexed->indices.begin())];
    return stored;
}

double misfit(const CellEquations& equations, const CellGroups& groups,
              const std::vector<double>& values) {
    double sum = 0;
    for (std::size_t i = 0; i < groups.size(); ++i) {
        sum -= 2 * equations.right[i] * values[groups[i]];
        for (std::size_t j = 0; j < groups.size(); ++j)
            sum += values[groups[i]] * equations.normal[i * groups.size() + j] * values[groups[j]];
    }
    return sum;
}

// By the definition: what lies beyond half a step, squared, in quarters.
double excess(const CellEquations& equations, const CellGroups& groups,
              const std::vector<double>& values) {
    double sum = 0;
    for (const CellCoefficient& coefficient : equations.coefficients) {
        double shown = -coefficient.value;
        for (const CellShare& share : coefficient.shares)
            shown += share.weight * values[groups[share.cell]];
        const double over = std::max(std::abs(shown) - coefficient.step / 2, 0.0);
        sum += over * over / 0.25;
    }
    return sum;
}

TEST(GroupValues, CostIsWhatTheMisfitGrowsBy) {
    const Stored stored = storedArt(3);
    for (const CellEquations& equations : stored.equations) {
        const GroupValues apart(equations, stored.groups, stored.count);
        CellGroups joined = stored.groups;
        std::replace(joined.begin(), joined.end(), std::size_t{4}, std::size_t{1});
        const std::size_t fewer = renumber(joined);
        const GroupValues together(equations, joined, fewer);
        EXPECT_NEAR(apart.costOfJoining(1, 4),
                    misfit(equations, joined, together.values()) -
                        misfit(equations, stored.groups, apart.values()),
                    1e-6);
    }
}

TEST(BoundedChannel, HoldsTheBoundsForTheArtThatWasStored) {
    const Stored stored = storedArt(5);
    for (const CellEquations& equations : stored.equations) {
        BoundedChannel channel(equations);
        EXPECT_LT(channel.fit(stored.groups, stored.count), 0.01);
        EXPECT_LT(excess(equations, stored.groups, channel.values()), 0.01);
    }
}

TEST(BoundedChannel, TellsWhatAChangeCosts) {
    const Stored stored = storedArt(6);
    const CellEquations& luma = stored.equations[0];
    BoundedChannel channel(luma);
    channel.fit(stored.groups, stored.count);
    tests::Random random(6);
    for (int i = 0; i < 50; ++i) {
        const auto cell =
            static_cast<std::size_t>(random.between(0, kBoundedCells * kBoundedCells - 1));
        const double by = random.between(-90, 90);
        CellGroups groups = stored.groups;
        std::vector<double> values = channel.values();
        groups[cell] = values.size();
        values.push_back(channel.values()[stored.groups[cell]] + by);
        const double before = excess(luma, stored.groups, channel.values());
        const double growth = channel.growth(cell, by);
        EXPECT_NEAR(growth, excess(luma, groups, values) - before, 1e-6 * (1 + growth));
        channel.change(cell, by);
        EXPECT_NEAR(channel.bestChange(cell), -by, 20) << "the way back, as far as steps tell";
        EXPECT_LE(channel.growth(cell, channel.bestChange(cell)), 0);
        channel.change(cell, -by);
    }
}

TEST(BoundedCells, JoinsWhatTheFileDoesNotTellApart) {
    const Stored stored = storedArt(4);
    CellGroups wrong = stored.groups;
    for (std::size_t cell = 0; cell < wrong.size(); cell += 2) {
        if (wrong[cell] == 2) wrong[cell] = stored.count;
    }
    EXPECT_EQ(BoundedCells(stored.equations, wrong).groups(), stored.groups);
}

TEST(BoundedCells, LeavesAloneWhatIsNoArtOfCells) {
    Stored stored = storedArt(8);
    tests::Random random(8);
    for (CellEquations& equations : stored.equations) {
        for (CellCoefficient& coefficient : equations.coefficients)
            coefficient.value += coefficient.step * random.between(-9, 9);
    }
    const BoundedCells cells(stored.equations, stored.groups);
    EXPECT_FALSE(cells.isOfCells());
    EXPECT_EQ(cells.groups(), stored.groups);
}

TEST(BoundedCells, GivesACellAColourOfItsOwn) {
    for (std::uint64_t seed = 1; seed <= 3; ++seed) {
        constexpr std::size_t kCell = 27;
        std::size_t alike = 0;
        const Stored stored = storedShade(seed, kCell, alike);
        CellGroups wrong = stored.groups;
        wrong[kCell] = alike;
        renumber(wrong);
        const BoundedCells cells(stored.equations, wrong);
        EXPECT_TRUE(cells.isOfCells());
        EXPECT_EQ(cells.groups(), stored.groups) << seed;
    }
}

}  // namespace
}  // namespace pantile::picture
