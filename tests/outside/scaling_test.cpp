// Scaling compared with Pillow's box and Lanczos filters, which are given linear light.

#include <sstream>
#include <string>

#include <gtest/gtest.h>

#include "image_files/read_image.h"
#include "outside/hex_colour.h"
#include "outside/run_program.h"
#include "picture/resample.h"
#include "support/matchers.h"
#include "support/temporary_folder.h"

namespace pantile {
namespace {

using tests::channelOf;

TEST(Scaling, AgreesWithPillowWithinOneStep) {
    const std::string python = tests::pythonWithPillow();
    if (python.empty()) GTEST_SKIP() << "Debian's package python3-pil is not installed";
    const tests::TemporaryFolder folder;
    const tests::Outcome theirs = tests::run(python + " " + tests::script("scale_pictures.py") +
                                             " " + tests::inQuotes(folder.path().string()));
    ASSERT_EQ(theirs.status, 0) << theirs.output;
    const auto picture = image_files::readImageFile(folder.path() / "picture.png");
    ASSERT_THAT(picture, tests::isOk());
    std::istringstream lines(theirs.output);
    int cases = 0;
    std::string filter;
    for (core::Size size; lines >> filter >> size.width >> size.height; ++cases) {
        const auto scale = filter == "area" ? picture::Scale::Area : picture::Scale::Lanczos;
        const auto ours = picture::resample(
            picture->pixels, picture::frame(picture->pixels.size, size, picture::Fit::Stretch),
            scale);
        ASSERT_THAT(ours, tests::isOk());
        for (const picture::LinearPixel& pixel : ours->pixels) {
            std::string wanted;
            lines >> wanted;
            const core::Rgb8 cell = core::toRgb8(pixel.colour);
            EXPECT_NEAR(cell.r, channelOf(wanted, 0), 1) << filter << ' ' << size.width;
            EXPECT_NEAR(cell.g, channelOf(wanted, 1), 1) << filter << ' ' << size.width;
            EXPECT_NEAR(cell.b, channelOf(wanted, 2), 1) << filter << ' ' << size.width;
        }
    }
    EXPECT_EQ(cases, 6);
}

}  // namespace
}  // namespace pantile
