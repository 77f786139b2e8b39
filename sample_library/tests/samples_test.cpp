#include <algorithm>
#include <fstream>
#include <iterator>
#include <set>
#include <sstream>

#include <gtest/gtest.h>

#include "core/texture.h"
#include "draw/artwork.h"
#include "draw/sample.h"
#include "support/matchers.h"

namespace pantile::sample_art {
namespace {

std::vector<std::string> tagsOf(const Sample& sample) {
    std::istringstream words(sample.tags);
    return {std::istream_iterator<std::string>(words), std::istream_iterator<std::string>()};
}

std::set<int> inksOf(const Sample& sample) {
    std::set<int> inks;
    const core::Grid grid = sample.sheet.toGrid();
    for (const core::PaletteIndex cell : grid.cells()) inks.insert(cell);
    return inks;
}

TEST(Samples, AreManyInThreeSizesEachWithItsOwnTitleAndFile) {
    std::set<std::string> titles;
    std::set<std::string> files;
    std::set<int> sides;
    for (const Sample& sample : allSamples()) {
        EXPECT_TRUE(titles.insert(sample.title).second) << sample.title;
        EXPECT_TRUE(files.insert(fileNameOf(sample.title)).second) << sample.title;
        sides.insert(sample.sheet.side());
    }
    EXPECT_GE(titles.size(), 24U);
    EXPECT_EQ(sides, (std::set<int>{16, 32, 64}));
}

TEST(Samples, HaveTagsThatTheLibraryTakes) {
    for (const Sample& sample : allSamples()) {
        const std::vector<std::string> tags = tagsOf(sample);
        EXPECT_GE(tags.size(), 2U) << sample.title;
        for (const std::string& tag : tags) EXPECT_THAT(core::checkTag(tag), tests::isOk()) << tag;
        EXPECT_EQ(sample.title.find_first_of(",\""), std::string::npos) << sample.title;
    }
}

TEST(Samples, LeaveCellsClearInSpritesOnly) {
    for (const Sample& sample : allSamples()) {
        const std::vector<std::string> tags = tagsOf(sample);
        const bool saysSprite = std::find(tags.begin(), tags.end(), "sprite") != tags.end();
        EXPECT_EQ(inksOf(sample).contains(static_cast<int>(Ink::Clear)), saysSprite)
            << sample.title;
    }
}

TEST(Samples, UseAtLeastThreeInks) {
    for (const Sample& sample : allSamples()) EXPECT_GE(inksOf(sample).size(), 3U) << sample.title;
}

TEST(Samples, AreEachOnALineOfTheReadme) {
    std::ifstream in(PANTILE_SOURCE_DIR "/sample_library/README.md");
    const std::string readme{std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
    ASSERT_FALSE(readme.empty());
    for (const Sample& sample : allSamples())
        EXPECT_NE(readme.find(sample.title), std::string::npos) << sample.title;
}

}  // namespace
}  // namespace pantile::sample_art
