#include "picture/palette_builder.h"

#include <algorithm>
#include <set>

#include <gtest/gtest.h>

#include "core/colour_spaces.h"
#include "picture/pictures.h"

namespace pantile::picture {
namespace {

using core::Rgb8;

double meanSquaredDistance(const std::vector<Rgb8>& colours, const std::vector<Rgb8>& palette) {
    double sum = 0;
    for (const Rgb8 colour : colours) {
        double least = 1e9;
        for (const Rgb8 entry : palette)
            least =
                std::min(least, core::squaredDistance(core::toOkLab(colour), core::toOkLab(entry)));
        sum += least;
    }
    return sum / static_cast<double>(colours.size());
}

TEST(PaletteBuilder, TakesFewColoursExactlyInOrderOfAppearance) {
    const std::vector<Rgb8> four{{200, 0, 0}, {0, 0, 90}, {255, 255, 255}, {1, 2, 3}};
    std::vector<Rgb8> cells;
    for (const std::size_t i : {0U, 0U, 1U, 2U, 0U, 1U, 3U, 3U}) cells.push_back(four[i]);
    EXPECT_EQ(chooseColours(cells, 4), four);
    EXPECT_EQ(chooseColours(cells, 16), four);
}

TEST(PaletteBuilder, CountsDistinctColoursUpToALimit) {
    const std::vector<Rgb8> cells{{1, 1, 1}, {1, 1, 1}, {2, 2, 2}, {3, 3, 3}, {4, 4, 4}};
    EXPECT_EQ(distinctColours(cells, 10).size(), 4U);
    EXPECT_EQ(distinctColours(cells, 2).size(), 3U) << "one more than asked for tells 'too many'";
    EXPECT_TRUE(chooseColours({}, 4).empty());
}

TEST(PaletteBuilder, ReducesFourColoursInTwoPairsToThePairsMiddles) {
    // By hand: two near-blacks and two near-whites, equally often, give one grey for each pair.
    const std::vector<Rgb8> cells{{10, 10, 10}, {14, 14, 14}, {240, 240, 240}, {246, 246, 246}};
    EXPECT_EQ(chooseColours(cells, 2), (std::vector<Rgb8>{{12, 12, 12}, {243, 243, 243}}));
}

TEST(PaletteBuilder, FindsClustersWhereTheyAre) {
    // Eight far-apart colours, each with small noise around it: every choice lies by its own.
    const std::vector<Rgb8> centres{{20, 20, 20},   {200, 30, 30},  {30, 160, 40},
                                    {40, 50, 180},  {210, 190, 40}, {40, 180, 190},
                                    {180, 60, 170}, {230, 230, 230}};
    tests::Random random(5);
    std::vector<Rgb8> cells;
    const auto near = [&random](int value) {
        return static_cast<std::uint8_t>(value + random.between(-4, 4));
    };
    for (int i = 0; i < 4000; ++i) {
        const Rgb8 centre = centres[static_cast<std::size_t>(random.between(0, 7))];
        cells.push_back({near(centre.r), near(centre.g), near(centre.b)});
    }
    const std::vector<Rgb8> chosen = chooseColours(cells, 8);
    ASSERT_EQ(chosen.size(), 8U);
    for (const Rgb8 centre : centres) {
        EXPECT_TRUE(std::ranges::any_of(chosen, [centre](Rgb8 colour) {
            return std::abs(colour.r - centre.r) <= 2 && std::abs(colour.g - centre.g) <= 2 &&
                   std::abs(colour.b - centre.b) <= 2;
        })) << core::toHex(centre);
    }
}

TEST(PaletteBuilder, GivesAsManyDistinctColoursAsAskedFor) {
    for (std::uint64_t seed = 1; seed <= 4; ++seed) {
        for (const int count : {1, 2, 3, 16, 255}) {
            const std::vector<Rgb8> chosen = chooseColours(randomColours(600, seed), count);
            EXPECT_EQ(chosen.size(), static_cast<std::size_t>(count));
            EXPECT_EQ(std::set<Rgb8>(chosen.begin(), chosen.end()).size(), chosen.size());
        }
    }
}

TEST(PaletteBuilder, FillsPlacesThatRoundingWouldWaste) {
    // All 27 colours of a tiny cube for 26 places: centres crowd together and some round alike.
    std::vector<Rgb8> cells;
    for (int i = 0; i < 27; ++i)
        cells.push_back({static_cast<std::uint8_t>(100 + i % 3),
                         static_cast<std::uint8_t>(100 + i / 3 % 3),
                         static_cast<std::uint8_t>(100 + i / 9)});
    for (int count = 1; count <= 26; ++count) {
        const std::vector<Rgb8> chosen = chooseColours(cells, count);
        EXPECT_EQ(std::set<Rgb8>(chosen.begin(), chosen.end()).size(),
                  static_cast<std::size_t>(count));
    }
}

TEST(PaletteBuilder, ServesBetterWithEveryDoubling) {
    const std::vector<Rgb8> cells = randomColours(3000, 3);
    double last = 1e9;
    for (const int count : {1, 2, 4, 8, 16, 32, 64, 128, 256}) {
        const double loss = meanSquaredDistance(cells, chooseColours(cells, count));
        EXPECT_LT(loss, last * 0.75) << count << " colours";
        last = loss;
    }
}

TEST(PaletteBuilder, DoesNotDependOnTheOrderOfTheCells) {
    std::vector<Rgb8> cells = randomColours(500, 11);
    const std::vector<Rgb8> chosen = chooseColours(cells, 16);
    std::reverse(cells.begin(), cells.end());
    EXPECT_EQ(chooseColours(cells, 16), chosen);
}

TEST(PaletteBuilder, OrdersReducedPalettesFromDarkToLight) {
    const std::vector<Rgb8> chosen = chooseColours(randomColours(500, 4), 16);
    EXPECT_TRUE(
        std::ranges::is_sorted(chosen, {}, [](Rgb8 colour) { return core::toOkLab(colour).l; }));
}

TEST(PaletteBuilder, KeepsPinnedColoursInFrontAndPlacesTheOthersBesideThem) {
    const std::vector<Rgb8> pinned{{200, 110, 100}, {90, 120, 130}};
    for (std::uint64_t seed = 1; seed <= 4; ++seed) {
        const std::vector<Rgb8> cells = randomColours(300, seed);
        const std::vector<Rgb8> chosen = chooseColours(cells, 8, pinned);
        ASSERT_EQ(chosen.size(), 8U);
        EXPECT_TRUE(std::equal(pinned.begin(), pinned.end(), chosen.begin()));
        EXPECT_EQ(std::set<Rgb8>(chosen.begin(), chosen.end()).size(), 8U);
        std::vector<Rgb8> blind = chooseColours(cells, 6);
        blind.insert(blind.end(), pinned.begin(), pinned.end());
        EXPECT_LT(meanSquaredDistance(cells, chosen), meanSquaredDistance(cells, blind));
    }
    EXPECT_EQ(chooseColours(randomColours(300, 1), 2, pinned), pinned);
}

TEST(PaletteBuilder, SpendsNoPlaceOnAColourThatIsPinned) {
    const std::vector<Rgb8> cells{{9, 9, 9}, {80, 80, 80}, {200, 0, 0}, {9, 9, 9}};
    EXPECT_EQ(chooseColours(cells, 4, std::vector<Rgb8>{{200, 0, 0}, {0, 0, 255}}),
              (std::vector<Rgb8>{{200, 0, 0}, {0, 0, 255}, {9, 9, 9}, {80, 80, 80}}));
}

}  // namespace
}  // namespace pantile::picture
