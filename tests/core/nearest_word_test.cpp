#include "core/nearest_word.h"

#include <array>

#include <gtest/gtest.h>

namespace pantile::core {
namespace {

constexpr std::array<std::string_view, 4> kWords = {"--canvas", "--colours", "--fit", "--title"};

TEST(NearestWord, FindsSlipsOfTheKeys) {
    EXPECT_EQ(nearestWord("--cavnas", kWords), "--canvas");
    EXPECT_EQ(nearestWord("--colour", kWords), "--colours");
    EXPECT_EQ(nearestWord("--ti", kWords), "--fit");
    EXPECT_EQ(nearestWord("--fit", kWords), "--fit");
}

TEST(NearestWord, LeavesWhatIsFarFromAll) {
    EXPECT_EQ(nearestWord("lighthouse", kWords), std::nullopt);
    EXPECT_EQ(nearestWord(std::string(10000, 'x'), kWords), std::nullopt);
    constexpr std::array<std::string_view, 3> kShort = {"id", "few", "title"};
    EXPECT_EQ(nearestWord("nix", kShort), std::nullopt);
    EXPECT_EQ(nearestWord("", kShort), std::nullopt);
    EXPECT_EQ(nearestWord("fwe", kShort), "few");
    EXPECT_EQ(didYouMean("lighthouse", kWords, "see the help"), "see the help");
    EXPECT_EQ(didYouMean("--titel", kWords, "see the help"), "did you mean --title?");
}

}  // namespace
}  // namespace pantile::core
