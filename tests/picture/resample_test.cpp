#include "picture/resample.h"

#include <gtest/gtest.h>

#include "picture/pictures.h"
#include "support/matchers.h"

namespace pantile::picture {
namespace {

using core::Rgb8;
using core::Rgba8;
using core::Size;
using tests::failsWith;
using tests::isOk;

LinearPicture resampled(const core::Pixels& pixels, Size target, Fit fit, Scale scale) {
    auto picture = resample(pixels, frame(pixels.size, target, fit), scale);
    EXPECT_THAT(picture, isOk());
    return *std::move(picture);
}

LinearPicture averaged(const core::Pixels& pixels, Size target, Fit fit = Fit::Stretch) {
    return resampled(pixels, target, fit, Scale::Area);
}

TEST(Resample, AveragesInLinearLight) {
    // Half black, half white is linear 0.5, which IEC 61966-2-1 encodes as 187.5: 188.
    const LinearPicture picture = averaged(pixelsOf(2, 1, {grey(0), grey(255)}), {1, 1});
    EXPECT_DOUBLE_EQ(picture.pixels[0].colour.r, 0.5);
    EXPECT_EQ(core::toRgb8(picture.pixels[0].colour), (Rgb8{188, 188, 188}));
}

TEST(Resample, WeighsPixelsByTheirPartOfTheCell) {
    // Three pixels to two cells: each cell has one pixel whole and half of the middle one.
    const LinearPicture picture = averaged(pixelsOf(3, 1, {grey(255), grey(0), grey(0)}), {2, 1});
    EXPECT_DOUBLE_EQ(picture.pixels[0].colour.g, 2.0 / 3.0);
    EXPECT_DOUBLE_EQ(picture.pixels[1].colour.g, 0);
}

TEST(Resample, AveragesBothWays) {
    // Of nine pixels one is white, at a corner: four cells share them by 1, 1/2, 1/2, 1/4.
    core::Pixels pixels = flat(3, 3, grey(0));
    pixels.at(1, 1) = grey(255);
    const LinearPicture picture = averaged(pixels, {2, 2});
    for (const LinearPixel& pixel : picture.pixels)
        EXPECT_DOUBLE_EQ(pixel.colour.b, 0.25 / (1.5 * 1.5));
}

TEST(Resample, LeavesInvisiblePixelsNoSay) {
    const LinearPicture picture =
        averaged(pixelsOf(2, 1, {{200, 100, 50, 255}, {0, 255, 0, 0}}), {1, 1});
    EXPECT_EQ(core::toRgb8(picture.pixels[0].colour), (Rgb8{200, 100, 50}));
    EXPECT_DOUBLE_EQ(picture.pixels[0].alpha, 0.5);
}

TEST(Resample, WeighsColoursByAlpha) {
    // White at a third of the opacity of black: linear 1/4.
    const LinearPicture picture = averaged(pixelsOf(2, 1, {grey(255, 85), grey(0, 255)}), {1, 1});
    EXPECT_DOUBLE_EQ(picture.pixels[0].colour.r, 0.25);
    EXPECT_DOUBLE_EQ(picture.pixels[0].alpha, (85 + 255) / 510.0);
}

TEST(Resample, EnlargesByWholeCells) {
    const LinearPicture picture = averaged(pixelsOf(2, 1, {grey(10), grey(250)}), {4, 2});
    for (int y = 0; y < 2; ++y) {
        for (int x = 0; x < 4; ++x)
            EXPECT_EQ(core::toRgb8(picture.pixels[static_cast<std::size_t>(y * 4 + x)].colour).r,
                      x < 2 ? 10 : 250);
    }
}

TEST(Resample, TakesThePixelUnderTheCentreWhenNearest) {
    // Five pixels to two cells: centres at 1.25 and 3.75.
    const core::Pixels pixels = pixelsOf(5, 1, {grey(0), grey(1), grey(2), grey(3), grey(4)});
    const LinearPicture picture = resampled(pixels, {2, 1}, Fit::Stretch, Scale::Nearest);
    EXPECT_EQ(core::toRgb8(picture.pixels[0].colour).r, 1);
    EXPECT_EQ(core::toRgb8(picture.pixels[1].colour).r, 3);
}

TEST(Resample, KeepsFlatPicturesFlat) {
    for (std::uint64_t seed = 1; seed <= 50; ++seed) {
        tests::Random random(seed);
        const Rgba8 colour = randomPixels(1, 1, seed).pixels[0];
        const core::Pixels pixels = flat(random.between(1, 70), random.between(1, 70), colour);
        const Size target{random.between(1, 40), random.between(1, 40)};
        for (const Scale scale : {Scale::Area, Scale::Nearest}) {
            for (const Fit fit : {Fit::Cover, Fit::Stretch}) {
                for (const LinearPixel& pixel : resampled(pixels, target, fit, scale).pixels) {
                    ASSERT_EQ(core::toRgb8(pixel.colour), colour.rgb()) << "seed " << seed;
                    ASSERT_NEAR(pixel.alpha, 1, 1e-12);
                }
            }
        }
    }
}

TEST(Resample, KeepsTheMean) {
    // Stretching moves light about but adds none and loses none.
    for (std::uint64_t seed = 1; seed <= 20; ++seed) {
        tests::Random random(seed);
        const core::Pixels pixels =
            randomPixels(random.between(1, 50), random.between(1, 50), seed);
        double before = 0;
        for (const Rgba8& pixel : pixels.pixels) before += core::srgb8ToLinear(pixel.g);
        const LinearPicture picture =
            averaged(pixels, {random.between(1, 50), random.between(1, 50)});
        double after = 0;
        for (const LinearPixel& pixel : picture.pixels) after += pixel.colour.g;
        EXPECT_NEAR(before / static_cast<double>(pixels.pixels.size()),
                    after / static_cast<double>(picture.pixels.size()), 1e-12)
            << "seed " << seed;
    }
}

TEST(Resample, AgreesWithACellByCellSum) {
    // The same means by a plain double loop over all pixels, each weighed by its overlap.
    for (std::uint64_t seed = 1; seed <= 10; ++seed) {
        tests::Random random(seed);
        const core::Pixels pixels =
            randomPixels(random.between(1, 24), random.between(1, 24), seed, Alpha::Random);
        const Size target{random.between(1, 12), random.between(1, 12)};
        const LinearPicture picture = averaged(pixels, target, Fit::Stretch);
        const auto overlap = [](double begin, double end, int pixel) {
            return std::max(0.0, std::min(end, pixel + 1.0) - std::max(begin, 1.0 * pixel));
        };
        const double pitchX = 1.0 * pixels.size.width / target.width;
        const double pitchY = 1.0 * pixels.size.height / target.height;
        for (int cellY = 0; cellY < target.height; ++cellY) {
            for (int cellX = 0; cellX < target.width; ++cellX) {
                double light = 0;
                double alpha = 0;
                for (int y = 0; y < pixels.size.height; ++y) {
                    for (int x = 0; x < pixels.size.width; ++x) {
                        const double weight = overlap(cellX * pitchX, (cellX + 1) * pitchX, x) *
                                              overlap(cellY * pitchY, (cellY + 1) * pitchY, y) *
                                              pixels.at(x, y).a;
                        light += weight * core::srgb8ToLinear(pixels.at(x, y).r);
                        alpha += weight;
                    }
                }
                const LinearPixel& cell =
                    picture.pixels[static_cast<std::size_t>(cellY * target.width + cellX)];
                EXPECT_NEAR(cell.alpha, alpha / (255 * pitchX * pitchY), 1e-12);
                if (alpha > 0) {
                    EXPECT_NEAR(cell.colour.r, light / alpha, 1e-12);
                }
            }
        }
    }
}

TEST(Resample, LeavesTheMarginOfContainInvisible) {
    const LinearPicture picture = averaged(flat(8, 4, grey(90)), {4, 4}, Fit::Contain);
    for (int y = 0; y < 4; ++y) {
        for (int x = 0; x < 4; ++x) {
            const double alpha = picture.pixels[static_cast<std::size_t>(y * 4 + x)].alpha;
            EXPECT_DOUBLE_EQ(alpha, y == 1 || y == 2 ? 1 : 0);
        }
    }
}

TEST(Resample, CanBeStoppedAndTellsHowFarItIs) {
    std::stop_source source;
    std::int64_t last = 0;
    const core::Progress progress{source.get_token(),
                                  [&](std::int64_t done, std::int64_t total, std::string_view) {
                                      EXPECT_EQ(total, 8);
                                      last = done;
                                      if (done == 3) source.request_stop();
                                  }};
    const core::Pixels pixels = flat(16, 16, grey(1));
    EXPECT_THAT(resample(pixels, frame({16, 16}, {8, 8}, Fit::Stretch), Scale::Area, progress),
                failsWith(core::ErrorKind::Cancelled, "stopped"));
    EXPECT_EQ(last, 3);
}

}  // namespace
}  // namespace pantile::picture
