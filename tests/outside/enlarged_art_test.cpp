// Enlarged art taken back from JPEG files as Pillow writes them: chroma whole and halved, and files
// that come in several scans.

#include <algorithm>
#include <sstream>
#include <string>
#include <vector>

#include <gtest/gtest.h>

#include "image_files/read_image.h"
#include "outside/hex_colour.h"
#include "outside/run_program.h"
#include "picture/pixel_scale.h"
#include "support/matchers.h"
#include "support/temporary_folder.h"

namespace pantile {
namespace {

constexpr int kCells = 16;

int largestDifference(const core::Pixels& ours, const std::vector<std::string>& wanted) {
    int worst = 0;
    for (std::size_t i = 0; i < wanted.size(); ++i) {
        const core::Rgba8& cell = ours.pixels[i];
        worst = std::max({worst, std::abs(cell.r - tests::channelOf(wanted[i], 0)),
                          std::abs(cell.g - tests::channelOf(wanted[i], 1)),
                          std::abs(cell.b - tests::channelOf(wanted[i], 2))});
    }
    return worst;
}

TEST(EnlargedArt, ComesBackFromEveryFormOfJpegThatPillowWrites) {
    const std::string python = tests::pythonWithPillow();
    if (python.empty()) GTEST_SKIP() << "Debian's package python3-pil is not installed";
    const tests::TemporaryFolder folder;
    const tests::Outcome made = tests::run(python + " " + tests::script("make_enlarged.py") + " " +
                                           tests::inQuotes(folder.path().string()));
    ASSERT_EQ(made.status, 0) << made.output;
    std::istringstream lines(made.output);
    std::vector<std::string> wanted(kCells * kCells);
    for (std::string& cell : wanted) lines >> cell;
    int files = 0;
    for (std::string name; lines >> name; ++files) {
        SCOPED_TRACE(name);
        const auto picture = image_files::readImageFile(folder.path() / name);
        ASSERT_THAT(picture, tests::isOk());
        EXPECT_TRUE(picture->planes);
        const auto art = picture::findEnlargedArt(*picture);
        ASSERT_TRUE(art);
        ASSERT_EQ(art->small.pixels.size, (core::Size{kCells, kCells}));
        EXPECT_LE(largestDifference(art->small.pixels, wanted), 4);
    }
    EXPECT_EQ(files, 12);
}

}  // namespace
}  // namespace pantile
