#include "image_files/jpeg_planes.h"

#include <string>

#include <gtest/gtest.h>

#include "image_files/libjpeg_pictures.h"
#include "image_files/qt_pictures.h"
#include "image_files/read_image.h"
#include "support/matchers.h"
#include "support/random.h"

namespace pantile::image_files {
namespace {

// 24x32: the border's chroma blocks are half filled.
std::vector<std::uint8_t> smallJpeg() {
    return writtenByQt(redAboveBlue(24, 32), "JPEG");
}

TEST(JpegPlanes, HoldsEveryBlockOfEveryChannel) {
    const auto planes = readJpegPlanes(smallJpeg());
    ASSERT_TRUE(planes);
    EXPECT_EQ(planes->size, (core::Size{24, 32}));
    for (const core::CoefficientPlane& plane : planes->channels) {
        EXPECT_EQ(plane.blocks.width,
                  24 / plane.pixelsAcross / 8 + 24 / plane.pixelsAcross % 8 / 4);
        EXPECT_EQ(plane.blocks.height, 32 / plane.pixelsDown / 8);
        EXPECT_EQ(plane.coefficients.size(),
                  static_cast<std::size_t>(plane.blocks.width * plane.blocks.height) *
                      core::kBlockCoefficients);
    }
    // Red's luma is 76, blue's 29 (ITU-T T.871); the first coefficient is eight times the mean.
    const core::CoefficientPlane& luma = planes->channels[0];
    EXPECT_NEAR(luma.coefficients.front() * luma.steps[0], 8 * (76 - 128), luma.steps[0]);
    const std::size_t last = luma.coefficients.size() - core::kBlockCoefficients;
    EXPECT_NEAR(luma.coefficients[last] * luma.steps[0], 8 * (29 - 128), luma.steps[0]);
}

TEST(JpegPlanes, ComesWithPicturesAsStoredOnly) {
    const auto jpeg = readImageBytes(smallJpeg(), "buoy.jpg");
    ASSERT_THAT(jpeg, tests::isOk());
    EXPECT_TRUE(jpeg->planes);
    const auto png = readImageBytes(writtenByQt(redAboveBlue(24, 32), "PNG"), "buoy.png");
    ASSERT_THAT(png, tests::isOk());
    EXPECT_FALSE(png->planes);
}

// Whole, halved across, down and both ways (4:4:4, 4:2:2, 4:4:0 and 4:2:0).
TEST(JpegPlanes, SaysHowManyPixelsAChromaSampleIsOf) {
    for (const int across : {1, 2}) {
        for (const int down : {1, 2}) {
            SCOPED_TRACE(std::to_string(across) + " across, " + std::to_string(down) + " down");
            const auto planes =
                readJpegPlanes(writtenByLibjpeg(redAboveBlue(48, 64), {across, down, false}));
            ASSERT_TRUE(planes);
            EXPECT_EQ(planes->channels[0].pixelsAcross, 1);
            EXPECT_EQ(planes->channels[0].pixelsDown, 1);
            for (const std::size_t chroma : {1U, 2U}) {
                EXPECT_EQ(planes->channels.at(chroma).pixelsAcross, across);
                EXPECT_EQ(planes->channels.at(chroma).pixelsDown, down);
                EXPECT_EQ(planes->channels.at(chroma).blocks,
                          (core::Size{48 / across / 8, 64 / down / 8}));
            }
            // Red's Cr is 255.5, blue's Cb 255.5 (ITU-T T.871), both cut to 255.
            const core::CoefficientPlane& cr = planes->channels[2];
            EXPECT_NEAR(cr.coefficients.front() * cr.steps[0], 8 * 127, cr.steps[0]);
        }
    }
}

TEST(JpegPlanes, ReadsProgressiveFilesLikeOthers) {
    for (const int across : {1, 2}) {
        for (const int down : {1, 2}) {
            const QImage image = redAboveBlue(41, 37);
            const auto plain = readJpegPlanes(writtenByLibjpeg(image, {across, down, false}));
            const auto progressive = readJpegPlanes(writtenByLibjpeg(image, {across, down, true}));
            ASSERT_TRUE(plain);
            ASSERT_TRUE(progressive);
            for (std::size_t i = 0; i < plain->channels.size(); ++i) {
                EXPECT_EQ(progressive->channels.at(i).steps, plain->channels.at(i).steps);
                EXPECT_EQ(progressive->channels.at(i).coefficients,
                          plain->channels.at(i).coefficients);
            }
        }
    }
}

// Chroma at a quarter is more than is made use of.
TEST(JpegPlanes, RefusesOtherShares) {
    EXPECT_FALSE(readJpegPlanes(writtenByLibjpeg(redAboveBlue(48, 64), {4, 1, false})));
}

TEST(JpegPlanes, RefusesWhatIsCutShortOrNone) {
    const std::vector<std::uint8_t> whole = smallJpeg();
    for (std::size_t size = 0; size + 2 < whole.size(); ++size)
        EXPECT_FALSE(readJpegPlanes({whole.data(), size})) << size;
    EXPECT_FALSE(readJpegPlanes(writtenByQt(redAboveBlue(24, 32), "PNG")));
    EXPECT_FALSE(readJpegPlanes(writtenByQt(redAboveBlue(kMaxPlanesSide + 1, 8), "JPEG")));
    const QImage grey = redAboveBlue(24, 32).convertToFormat(QImage::Format_Grayscale8);
    EXPECT_FALSE(readJpegPlanes(writtenByQt(grey, "JPEG")));
}

TEST(JpegPlanes, SurvivesDamage) {
    const std::vector<std::uint8_t> whole = smallJpeg();
    tests::Random random(5);
    int read = 0;
    for (int i = 0; i < 500; ++i) {
        std::vector<std::uint8_t> bytes = whole;
        const int at = random.between(0, static_cast<int>(bytes.size()) - 1);
        bytes[static_cast<std::size_t>(at)] = static_cast<std::uint8_t>(random.between(0, 255));
        const auto planes = readJpegPlanes(bytes);
        if (!planes) continue;
        ++read;
        for (const core::CoefficientPlane& plane : planes->channels)
            EXPECT_EQ(plane.coefficients.size(), static_cast<std::size_t>(plane.blocks.width) *
                                                     static_cast<std::size_t>(plane.blocks.height) *
                                                     core::kBlockCoefficients);
    }
    EXPECT_GT(read, 0);
    EXPECT_LT(read, 500);
}

}  // namespace
}  // namespace pantile::image_files
