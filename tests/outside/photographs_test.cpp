// EXIF orientation and colour profiles compared with Pillow, whose profiles are Little CMS's.

#include <sstream>
#include <string>

#include <gtest/gtest.h>

#include "image_files/read_image.h"
#include "outside/hex_colour.h"
#include "outside/run_program.h"
#include "support/matchers.h"
#include "support/temporary_folder.h"

namespace pantile {
namespace {

using tests::channelOf;

void comparePixels(const core::Pixels& ours, std::istream& theirs, int tolerance) {
    int worst = 0;
    for (const core::Rgba8& pixel : ours.pixels) {
        std::string wanted;
        theirs >> wanted;
        worst = std::max({worst, std::abs(pixel.r - channelOf(wanted, 0)),
                          std::abs(pixel.g - channelOf(wanted, 1)),
                          std::abs(pixel.b - channelOf(wanted, 2))});
        EXPECT_EQ(pixel.a, 255);
    }
    EXPECT_LE(worst, tolerance);
}

TEST(Photographs, LookAsPillowShowsThem) {
    const std::string python = tests::pythonWithPillow();
    if (python.empty()) GTEST_SKIP() << "Debian's package python3-pil is not installed";
    const tests::TemporaryFolder folder;
    const tests::Outcome theirs = tests::run(python + " " + tests::script("make_photographs.py") +
                                             " " + tests::inQuotes(folder.path().string()));
    ASSERT_EQ(theirs.status, 0) << theirs.output;
    std::istringstream lines(theirs.output);
    int pictures = 0;
    std::string name;
    for (core::Size size; lines >> name >> size.width >> size.height; ++pictures) {
        SCOPED_TRACE(name);
        const auto picture = image_files::readImageFile(folder.path() / name);
        ASSERT_THAT(picture, tests::isOk());
        ASSERT_EQ(picture->pixels.size, size);
        comparePixels(picture->pixels, lines, name.starts_with("exact") ? 0 : 2);
    }
    EXPECT_EQ(pictures, 29);
}

}  // namespace
}  // namespace pantile
