#include "picture/convert.h"

#include <cmath>
#include <limits>

#include <gtest/gtest.h>

#include "core/fingerprint.h"
#include "core/texture.h"
#include "picture/nearest_colour.h"
#include "picture/pictures.h"
#include "support/matchers.h"

namespace pantile::picture {
namespace {

using core::ErrorKind;
using core::Grid;
using core::Palette;
using core::Rgb8;
using tests::failsWith;
using tests::isOk;

core::Picture plain(core::Pixels pixels) {
    return {std::move(pixels), std::nullopt};
}

ConvertOptions exactly() {
    ConvertOptions options;
    options.fit = Fit::Exact;
    return options;
}

ConvertOptions onto(int width, int height, Fit fit = Fit::Cover) {
    ConvertOptions options;
    options.target = {width, height};
    options.fit = fit;
    return options;
}

TEST(Convert, TakesPixelsExactlyInOrderOfFirstAppearance) {
    const auto converted = convertPicture(plain(pixelsOf(3, 2,
                                                         {{200, 0, 0, 255},
                                                          {0, 0, 9, 255},
                                                          {200, 0, 0, 255},
                                                          {1, 1, 1, 255},
                                                          {0, 0, 9, 255},
                                                          {200, 0, 0, 255}})),
                                          exactly());
    ASSERT_THAT(converted, isOk());
    EXPECT_EQ(converted->grid, *Grid::create(3, 2, {0, 1, 0, 2, 1, 0}));
    EXPECT_EQ(converted->palette, *Palette::create({{200, 0, 0}, {0, 0, 9}, {1, 1, 1}}));
}

TEST(Convert, KeepsEveryColourThereIs) {
    // 256 colours at a time, until all steps of all channels have passed through unchanged.
    for (int offset = 0; offset < 256; offset += 16) {
        core::Pixels pixels{{256, 1}, {}};
        for (int i = 0; i < 256; ++i)
            pixels.pixels.push_back({static_cast<std::uint8_t>(i),
                                     static_cast<std::uint8_t>(i + offset),
                                     static_cast<std::uint8_t>(255 - i), 255});
        ConvertOptions options = exactly();
        options.colours = 0;
        const auto converted = convertPicture(plain(pixels), options);
        ASSERT_THAT(converted, isOk());
        for (int i = 0; i < 256; ++i)
            ASSERT_EQ(converted->palette[converted->grid.at(i, 0)], pixels.at(i, 0).rgb());
    }
}

TEST(Convert, PutsTheTransparentEntryLast) {
    const auto converted = convertPicture(
        plain(pixelsOf(3, 1, {{5, 5, 5, 127}, {9, 9, 9, 128}, {8, 8, 8, 255}})), exactly());
    ASSERT_THAT(converted, isOk());
    EXPECT_EQ(converted->grid, *Grid::create(3, 1, {2, 0, 1}));
    EXPECT_EQ(converted->palette,
              *Palette::create({{9, 9, 9}, {8, 8, 8}, {0, 0, 0}}, core::PaletteIndex{2}));
}

TEST(Convert, CountsTheTransparentEntryAmongTheColours) {
    core::Pixels pixels = randomPixels(16, 16, 1);
    pixels.at(3, 3).a = 0;
    for (const int colours : {2, 3, 16, 256}) {
        ConvertOptions options = exactly();
        options.colours = colours;
        const auto converted = convertPicture(plain(pixels), options);
        ASSERT_THAT(converted, isOk());
        EXPECT_EQ(converted->palette.size(), colours);
        EXPECT_EQ(converted->palette.transparent(), converted->grid.at(3, 3));
    }
}

TEST(Convert, StandsPicturesOfOneColourAndOfNone) {
    const auto one = convertPicture(plain(flat(5, 5, {7, 8, 9, 255})), exactly());
    ASSERT_THAT(one, isOk());
    EXPECT_EQ(one->palette, *Palette::create({{7, 8, 9}, {7, 8, 9}}));
    EXPECT_EQ(one->grid, *Grid::filled(5, 5, 0));
    const auto none = convertPicture(plain(flat(5, 5, {7, 8, 9, 0})), exactly());
    ASSERT_THAT(none, isOk());
    EXPECT_EQ(none->palette.transparent(), none->grid.at(0, 0));
}

TEST(Convert, KeepsAnIndexedPictureToTheBit) {
    core::Picture picture = plain(pixelsOf(2, 1, {{3, 3, 3, 255}, {1, 1, 1, 255}}));
    picture.indexed = {{{1, 1, 1, 255}, {2, 2, 2, 255}, {3, 3, 3, 255}}, {2, 0}};
    ConvertOptions options = exactly();
    options.colours = 2;
    const auto kept = convertPicture(picture, options);
    ASSERT_THAT(kept, isOk());
    EXPECT_EQ(kept->grid, *Grid::create(2, 1, {2, 0}));
    EXPECT_EQ(kept->palette, *Palette::create({{1, 1, 1}, {2, 2, 2}, {3, 3, 3}}));

    options.palette = Palette::create({{3, 3, 3}, {1, 1, 1}}).value();
    EXPECT_EQ(convertPicture(picture, options)->grid, *Grid::create(2, 1, {0, 1}))
        << "a fixed palette has the say";
    options.palette = kept->palette;
    const auto again = convertPicture(picture, options);
    EXPECT_EQ(again->grid, kept->grid);
    EXPECT_FALSE(again->wanted) << "nothing was mapped";
}

TEST(Convert, ReducesWhenThereAreTooManyColours) {
    ConvertOptions options = exactly();
    options.colours = 5;
    const auto converted = convertPicture(plain(randomPixels(30, 20, 2)), options);
    ASSERT_THAT(converted, isOk());
    EXPECT_EQ(converted->palette.size(), 5);
    EXPECT_EQ(converted->grid.size(), (core::Size{30, 20}));
}

TEST(Convert, RefusesExactPicturesThatAreTooLarge) {
    EXPECT_THAT(convertPicture(plain(flat(257, 3, grey(0))), exactly()),
                failsWith(ErrorKind::DoesNotFit, "257x3 pixels does not fit 256x256 cells"));
    EXPECT_THAT(convertPicture(plain(flat(16, 17, grey(0))), onto(16, 16, Fit::Exact)),
                failsWith(ErrorKind::DoesNotFit, "16x17 pixels does not fit 16x16 cells"));
    EXPECT_THAT(convertPicture(plain(flat(9, 16, grey(0))), onto(16, 16, Fit::Exact)), isOk());
}

TEST(Convert, ScalesToTheTarget) {
    // A wide picture with a dark middle: cover shows the middle, stretch all of it.
    core::Pixels pixels = flat(40, 10, grey(255));
    for (int y = 0; y < 10; ++y) {
        for (int x = 15; x < 25; ++x) pixels.at(x, y) = grey(0);
    }
    const auto cover = convertPicture(plain(pixels), onto(4, 4, Fit::Cover));
    ASSERT_THAT(cover, isOk());
    EXPECT_EQ(cover->palette, *Palette::create({{0, 0, 0}, {0, 0, 0}}));
    const auto stretch = convertPicture(plain(pixels), onto(8, 2, Fit::Stretch));
    ASSERT_THAT(stretch, isOk());
    EXPECT_EQ(stretch->grid, *Grid::create(8, 2, {0, 0, 0, 1, 1, 0, 0, 0, 0, 0, 0, 1, 1, 0, 0, 0}));
}

TEST(Convert, LeavesTheMarginOfContainUnpainted) {
    const auto converted = convertPicture(plain(flat(20, 10, grey(50))), onto(4, 4, Fit::Contain));
    ASSERT_THAT(converted, isOk());
    EXPECT_EQ(converted->grid,
              *Grid::create(4, 4, {1, 1, 1, 1, 0, 0, 0, 0, 0, 0, 0, 0, 1, 1, 1, 1}));
    EXPECT_EQ(converted->palette.transparent(), core::PaletteIndex{1});
}

TEST(Convert, LaysThePictureOnTheFirstColourIfThePaletteHasNoTransparentEntry) {
    ConvertOptions options = onto(4, 4, Fit::Contain);
    options.palette = Palette::create({{0, 90, 0}, {50, 50, 50}}).value();
    const auto converted = convertPicture(plain(flat(20, 10, grey(50))), options);
    ASSERT_THAT(converted, isOk());
    EXPECT_EQ(converted->grid,
              *Grid::create(4, 4, {0, 0, 0, 0, 1, 1, 1, 1, 1, 1, 1, 1, 0, 0, 0, 0}));
}

TEST(Convert, MapsToTheNearestOfAFixedPalette) {
    for (std::uint64_t seed = 1; seed <= 10; ++seed) {
        ConvertOptions options = exactly();
        options.palette = Palette::create(randomColours(9, seed)).value();
        const core::Pixels pixels = randomPixels(12, 12, seed + 50);
        const auto converted = convertPicture(plain(pixels), options);
        ASSERT_THAT(converted, isOk());
        EXPECT_EQ(converted->palette, *options.palette);
        for (int y = 0; y < 12; ++y) {
            for (int x = 0; x < 12; ++x)
                ASSERT_EQ(converted->grid.at(x, y),
                          NearestColour(*options.palette).find(pixels.at(x, y).rgb()));
        }
    }
}

TEST(Convert, NeverLeavesThePaletteAndIsRepeatable) {
    for (std::uint64_t seed = 1; seed <= 30; ++seed) {
        tests::Random random(seed);
        ConvertOptions options = onto(random.between(1, 24), random.between(1, 24));
        options.fit = std::array{Fit::Cover, Fit::Contain, Fit::Stretch}.at(seed % 3);
        options.scale = seed % 2 == 0 ? Scale::Area : Scale::Nearest;
        options.dither = seed % 5 < 3 ? Dither::FloydSteinberg : Dither::None;
        options.colours = random.between(2, 40);
        const core::Picture picture =
            plain(randomPixels(random.between(1, 90), random.between(1, 90), seed, Alpha::Random));
        const auto converted = convertPicture(picture, options);
        ASSERT_THAT(converted, isOk()) << "seed " << seed;
        EXPECT_EQ(converted->grid.size(), options.target);
        EXPECT_LE(converted->palette.size(), options.colours);
        EXPECT_LT(converted->grid.largestIndex(), converted->palette.size());
        const auto again = convertPicture(picture, options);
        EXPECT_EQ(converted->grid, again->grid);
        EXPECT_EQ(converted->palette, again->palette);
    }
}

TEST(Convert, GivesTheSameCellsOnEveryMachine) {
    // Had from this code when it last changed on purpose, and the same from optimised and
    // unoptimised builds.
    ConvertOptions options = onto(32, 24);
    core::FingerprintBuilder builder;
    for (std::uint64_t seed = 1; seed <= 6; ++seed) {
        options.dither =
            std::array{Dither::FloydSteinberg, Dither::Optimal, Dither::BlueNoise}.at(seed % 3);
        const auto converted =
            convertPicture(plain(randomPixels(97, 61, seed, Alpha::Random)), options);
        ASSERT_THAT(converted, isOk());
        const std::string part =
            core::toHex(core::contentFingerprint(converted->grid, converted->palette));
        for (const char digit : part) builder.addByte(static_cast<std::uint8_t>(digit));
    }
    EXPECT_EQ(core::toHex(builder.finish()), "1215dc436e32204b");
}

TEST(Convert, PinsAndMergesColoursAlsoOfIndexedPictures) {
    const Palette table = Palette::create({{10, 10, 10}, {200, 0, 0}, {202, 2, 1}}).value();
    core::Picture picture =
        plain({{3, 1}, {{10, 10, 10, 255}, {200, 0, 0, 255}, {202, 2, 1, 255}}});
    picture.indexed =
        core::IndexedPixels{{{10, 10, 10, 255}, {200, 0, 0, 255}, {202, 2, 1, 255}}, {0, 1, 2}};
    ConvertOptions options = exactly();
    EXPECT_EQ(convertPicture(picture, options)->palette, table);
    options.mergeWithin = 200;
    EXPECT_EQ(convertPicture(picture, options)->grid, *Grid::create(3, 1, {0, 1, 1}));
    options.pinned = {{202, 2, 1}};
    EXPECT_EQ(convertPicture(picture, options)->palette,
              *Palette::create({{202, 2, 1}, {10, 10, 10}}));
    options.palette = table;
    EXPECT_THAT(convertPicture(picture, options), failsWith(ErrorKind::InvalidInput, "pinned"));
}

TEST(Convert, RefusesOptionsOutOfRange) {
    const core::Picture picture = plain(flat(4, 4, grey(0)));
    EXPECT_THAT(convertPicture(picture, onto(0, 0)), failsWith(ErrorKind::InvalidInput, "0x0"));
    EXPECT_THAT(convertPicture(picture, onto(16, 257)),
                failsWith(ErrorKind::InvalidInput, "16x257"));
    for (const int colours : {-1, 1, 257}) {
        ConvertOptions options = exactly();
        options.colours = colours;
        EXPECT_THAT(convertPicture(picture, options),
                    failsWith(ErrorKind::InvalidInput, "colours"));
    }
    for (const double strength : {-0.1, 1.1, std::numeric_limits<double>::quiet_NaN()}) {
        ConvertOptions options = exactly();
        options.strength = strength;
        EXPECT_THAT(convertPicture(picture, options),
                    failsWith(ErrorKind::InvalidInput, "strength"));
    }
    EXPECT_THAT(convertPicture(plain(pixelsOf(2, 2, {grey(0)})), exactly()),
                failsWith(ErrorKind::InvalidInput, "1 pixels do not fill"));
}

TEST(Convert, CanBeStopped) {
    std::stop_source source;
    source.request_stop();
    EXPECT_THAT(convertPicture(plain(flat(9, 9, grey(0))), onto(3, 3), {source.get_token(), {}}),
                failsWith(ErrorKind::Cancelled, "stopped"));
}

}  // namespace
}  // namespace pantile::picture
