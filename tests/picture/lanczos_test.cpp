#include "picture/lanczos.h"

#include <gtest/gtest.h>

#include "picture/pictures.h"
#include "support/matchers.h"

namespace pantile::picture {
namespace {

using core::Size;
using tests::isOk;

LinearPicture sharp(const core::Pixels& pixels, Size target, Fit fit = Fit::Stretch) {
    auto picture = lanczosScaled(pixels, frame(pixels.size, target, fit));
    EXPECT_THAT(picture, isOk());
    return *std::move(picture);
}

TEST(Lanczos, AtTheSameSizeChangesNothing) {
    const core::Pixels pixels = randomPixels(9, 6, 1);
    const LinearPicture picture = sharp(pixels, pixels.size);
    for (std::size_t i = 0; i < pixels.pixels.size(); ++i)
        EXPECT_EQ(core::toRgb8(picture.pixels[i].colour), pixels.pixels[i].rgb());
}

TEST(Lanczos, KeepsFlatPicturesFlat) {
    for (std::uint64_t seed = 1; seed <= 20; ++seed) {
        tests::Random random(seed);
        const core::Rgba8 colour = randomPixels(1, 1, seed).pixels[0];
        const core::Pixels pixels = flat(random.between(1, 60), random.between(1, 60), colour);
        for (const Fit fit : {Fit::Cover, Fit::Stretch}) {
            for (const LinearPixel& pixel :
                 sharp(pixels, {random.between(1, 30), random.between(1, 30)}, fit).pixels) {
                ASSERT_EQ(core::toRgb8(pixel.colour), colour.rgb()) << "seed " << seed;
                ASSERT_NEAR(pixel.alpha, 1, 1e-12);
            }
        }
    }
}

TEST(Lanczos, OverAnEdgeIsSteeperThanMeansAndStaysWithinTheScreen) {
    core::Pixels pixels = flat(64, 8, grey(60));
    for (int y = 0; y < 8; ++y) {
        for (int x = 30; x < 64; ++x) pixels.at(x, y) = grey(200);
    }
    const LinearPicture picture = sharp(pixels, {16, 2});
    EXPECT_LT(picture.pixels[6].colour.g, core::srgb8ToLinear(60));   // a ring before the edge
    EXPECT_GT(picture.pixels[8].colour.g, core::srgb8ToLinear(200));  // and behind it
    EXPECT_NEAR(picture.pixels[1].colour.g, core::srgb8ToLinear(60), 1e-6);
    for (core::Rgba8& pixel : pixels.pixels) pixel = pixel.r == 60 ? grey(0) : grey(255);
    for (const LinearPixel& pixel : sharp(pixels, {16, 2}).pixels) {
        EXPECT_GE(pixel.colour.g, 0);
        EXPECT_LE(pixel.colour.g, 1);
    }
}

TEST(Lanczos, LeavesTheMarginOfContainInvisibleAndTransparentPixelsNoSay) {
    core::Pixels pixels = flat(8, 4, {200, 100, 50, 255});
    for (int x = 0; x < 8; ++x) pixels.at(x, 0) = {0, 255, 0, 0};
    const LinearPicture picture = sharp(pixels, {4, 4}, Fit::Contain);
    EXPECT_EQ(picture.pixels[0].alpha, 0);
    EXPECT_EQ(picture.pixels[15].alpha, 0);
    EXPECT_EQ(core::toRgb8(picture.pixels[9].colour), (core::Rgb8{200, 100, 50}));
    EXPECT_EQ(core::toRgb8(picture.pixels[5].colour), (core::Rgb8{200, 100, 50}));
}

TEST(Lanczos, CanBeStopped) {
    std::stop_source source;
    source.request_stop();
    EXPECT_THAT(lanczosScaled(flat(4, 4, grey(1)), frame({4, 4}, {2, 2}, Fit::Stretch),
                              {source.get_token(), {}}),
                tests::failsWith(core::ErrorKind::Cancelled, "stopped"));
}

}  // namespace
}  // namespace pantile::picture
