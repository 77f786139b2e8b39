#include "picture/adjust.h"

#include <gtest/gtest.h>

#include "picture/pictures.h"
#include "picture/resample.h"
#include "support/matchers.h"

namespace pantile::picture {
namespace {

using core::Rgb8;
using tests::failsWith;

LinearPicture linear(const core::Pixels& pixels) {
    return *resample(pixels, frame(pixels.size, pixels.size, Fit::Exact), Scale::Nearest);
}

std::vector<Rgb8> after(const core::Pixels& pixels, const Adjustments& adjustments) {
    std::vector<Rgb8> colours;
    for (const LinearPixel& pixel : adjusted(linear(pixels), adjustments).pixels)
        colours.push_back(core::toRgb8(pixel.colour));
    return colours;
}

Rgb8 one(core::Rgba8 colour, const Adjustments& adjustments) {
    return after(flat(1, 1, colour), adjustments)[0];
}

TEST(Adjust, NothingByDefault) {
    const core::Pixels pixels = randomPixels(8, 8, 1);
    const std::vector<Rgb8> colours = after(pixels, {});
    for (std::size_t i = 0; i < colours.size(); ++i) EXPECT_EQ(colours[i], pixels.pixels[i].rgb());
}

TEST(Adjust, BrightnessIsAddedInPercentOfTheRange) {
    EXPECT_EQ(one({100, 0, 250, 255}, {.brightness = 20}), (Rgb8{151, 51, 255}));
    EXPECT_EQ(one({100, 0, 250, 255}, {.brightness = -20}), (Rgb8{49, 0, 199}));
}

TEST(Adjust, ContrastMovesAwayFromTheMiddle) {
    // 127.5 + (value - 127.5) x 1.5, and x 0.
    EXPECT_EQ(one({100, 200, 10, 255}, {.contrast = 50}), (Rgb8{86, 236, 0}));
    EXPECT_NEAR(one({100, 200, 10, 255}, {.contrast = -100}).g, 127.5, 0.5);
}

TEST(Adjust, GammaBendsTheMiddleTonesOnly) {
    // 255 x (64 / 255)^(1/2) = 127.7.
    EXPECT_EQ(one({64, 0, 255, 255}, {.gamma = 2}), (Rgb8{128, 0, 255}));
    EXPECT_EQ(one({128, 0, 255, 255}, {.gamma = 0.5}), (Rgb8{64, 0, 255}));
}

TEST(Adjust, SaturationChangesChromaAndNotLightness) {
    const Rgb8 grey = one({180, 90, 60, 255}, {.saturation = -100});
    EXPECT_EQ(grey.r, grey.g);
    EXPECT_EQ(grey.g, grey.b);
    const core::OkLab before = core::toOkLab(Rgb8{150, 110, 100});
    const core::OkLab more = core::toOkLab(one({150, 110, 100, 255}, {.saturation = 50}));
    EXPECT_NEAR(more.l, before.l, 0.005);
    EXPECT_NEAR(more.a, 1.5 * before.a, 0.005);
    EXPECT_NEAR(more.b, 1.5 * before.b, 0.005);
    EXPECT_EQ(one({70, 70, 70, 255}, {.saturation = 100}), (Rgb8{70, 70, 70}));
}

TEST(Adjust, LevelsStretchWhatIsThere) {
    const std::vector<Rgb8> colours =
        after(pixelsOf(3, 1, {grey(60), grey(120), grey(180)}), {.levels = true});
    EXPECT_EQ(colours, (std::vector<Rgb8>{{0, 0, 0}, {128, 128, 128}, {255, 255, 255}}));
    EXPECT_EQ(one(grey(90), {.levels = true}), (Rgb8{90, 90, 90}));  // nothing to stretch
}

TEST(Adjust, LevelsPassOverOutliersAndInvisibleCells) {
    core::Pixels pixels = flat(20, 20, grey(100));
    for (std::size_t i = 0; i < 200; ++i) pixels.pixels[i] = grey(150);
    pixels.pixels[0] = grey(0);       // one of 400
    pixels.pixels[1] = grey(255, 0);  // invisible
    const std::vector<Rgb8> colours = after(pixels, {.levels = true});
    EXPECT_EQ(colours[300], (Rgb8{0, 0, 0}));
    EXPECT_EQ(colours[100], (Rgb8{255, 255, 255}));
    EXPECT_EQ(colours[0], (Rgb8{0, 0, 0}));
}

TEST(Adjust, SharpeningAddsTheDifferenceFromTheMeanAround) {
    // In the middle of a row of three: mean (100 + 2 x 160 + 100) / 4 = 130, so 160 + 30.
    const std::vector<Rgb8> colours =
        after(pixelsOf(3, 1, {grey(100), grey(160), grey(100)}), {.sharpen = 100});
    EXPECT_EQ(colours[1], (Rgb8{190, 190, 190}));
    EXPECT_EQ(colours[0], (Rgb8{80, 80, 80}));  // mean (2 x 100 + 160) / 3 = 120
    EXPECT_EQ(after(flat(3, 3, grey(70)), {.sharpen = 100}),
              (std::vector<Rgb8>(9, Rgb8{70, 70, 70})));
}

TEST(Adjust, RefusesWhatIsOutOfRange) {
    EXPECT_THAT(checkAdjustments({.gamma = 0}), failsWith(core::ErrorKind::InvalidInput, "gamma"));
    EXPECT_THAT(checkAdjustments({.brightness = 101}),
                failsWith(core::ErrorKind::InvalidInput, "brightness"));
    EXPECT_THAT(checkAdjustments({.contrast = -101}),
                failsWith(core::ErrorKind::InvalidInput, "contrast"));
    EXPECT_THAT(checkAdjustments({.saturation = 200}),
                failsWith(core::ErrorKind::InvalidInput, "saturation"));
    EXPECT_THAT(checkAdjustments({.sharpen = -1}),
                failsWith(core::ErrorKind::InvalidInput, "sharpening"));
}

}  // namespace
}  // namespace pantile::picture
