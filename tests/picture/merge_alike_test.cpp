#include "picture/merge_alike.h"

#include <gtest/gtest.h>

#include "core/colour_spaces.h"
#include "picture/pictures.h"

namespace pantile::picture {
namespace {

using core::Rgb8;

TEST(MergeAlike, JoinsTwoAtTheirWeightedMean) {
    // Three cells of one and one of the other; OKLab's lightness of greys is all but even here.
    const std::vector<Rgb8> cells{
        {100, 100, 100}, {100, 100, 100}, {100, 100, 100}, {104, 104, 104}};
    const std::vector<Rgb8> palette{{100, 100, 100}, {250, 0, 0}, {104, 104, 104}};
    EXPECT_EQ(mergedAlike(cells, palette, 0, 200),
              (std::vector<Rgb8>{{101, 101, 101}, {250, 0, 0}}));
}

TEST(MergeAlike, LeavesTheColoursAloneBelowTheDistance) {
    const std::vector<Rgb8> palette{{100, 100, 100}, {104, 104, 104}};
    EXPECT_EQ(mergedAlike(palette, palette, 0, 0), palette);
    EXPECT_EQ(mergedAlike(palette, palette, 0, 100), palette);
    EXPECT_TRUE(mergedAlike({}, {}, 0, 100).empty());
}

TEST(MergeAlike, KeepsPinnedColoursAsTheyAre) {
    const std::vector<Rgb8> palette{
        {100, 100, 100}, {103, 103, 103}, {104, 104, 104}, {97, 97, 97}};
    EXPECT_EQ(mergedAlike(palette, palette, 2, 300),
              (std::vector<Rgb8>{{100, 100, 100}, {103, 103, 103}}));
}

TEST(MergeAlike, LeavesNoTwoCloserThanTheDistance) {
    for (std::uint64_t seed = 1; seed <= 5; ++seed) {
        const std::vector<Rgb8> merged =
            mergedAlike(randomColours(200, seed), randomColours(60, seed + 9), 0, 1000);
        EXPECT_LT(merged.size(), 60U);
        for (std::size_t i = 0; i < merged.size(); ++i) {
            for (std::size_t j = 0; j < i; ++j)
                EXPECT_GE(core::squaredDistance(core::toOkLab(merged[i]), core::toOkLab(merged[j])),
                          0.1 * 0.1);
        }
    }
}

}  // namespace
}  // namespace pantile::picture
