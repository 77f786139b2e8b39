#include "draw/masonry.h"

#include <map>

#include <gtest/gtest.h>

namespace pantile::sample_art {
namespace {

TEST(LayCourses, FillsEachCourseExactlyWithWidthsInRange) {
    for (std::uint64_t seed = 0; seed < 40; ++seed) {
        std::map<int, int> widths;
        for (const Block& block : layCourses(64, {16, 16, 16, 16}, {9, 22}, seed)) {
            EXPECT_TRUE(block.width >= 9 && block.width <= 22) << block.width << ", seed " << seed;
            widths[block.course] += block.width;
        }
        ASSERT_EQ(widths.size(), 4U) << "seed " << seed;
        for (const auto& [course, width] : widths)
            EXPECT_EQ(width, 64) << course << ", seed " << seed;
    }
}

TEST(LayCourses, NeverPutsAJointOnTheJointAbove) {
    for (std::uint64_t seed = 0; seed < 40; ++seed) {
        const std::vector<Block> blocks = layCourses(64, {16, 16, 16, 16}, {12, 20}, seed);
        for (const Block& above : blocks) {
            for (const Block& below : blocks) {
                if (below.course != above.course + 1) continue;
                EXPECT_NE(wrapped(above.x, 64), wrapped(below.x, 64)) << "seed " << seed;
            }
        }
    }
}

TEST(LayBlock, LeavesTheJointAtTheRightAndTheBottom) {
    Sheet sheet(16, Tiles::No, Ink::Night);
    layBlock(sheet, {2, 3, 6, 5, 0}, {Ink::Stone, Ink::Mist, Ink::Slate});
    EXPECT_EQ(sheet.at(2, 3), Ink::Mist);
    EXPECT_EQ(sheet.at(4, 5), Ink::Stone);
    EXPECT_EQ(sheet.at(6, 6), Ink::Slate);
    EXPECT_EQ(sheet.at(7, 4), Ink::Night);
    EXPECT_EQ(sheet.at(4, 7), Ink::Night);
}

}  // namespace
}  // namespace pantile::sample_art
