#include "picture/nearest_colour.h"

#include <gtest/gtest.h>

#include "picture/pictures.h"

namespace pantile::picture {
namespace {

using core::Palette;

TEST(NearestColour, PrefersTheLowerIndexOfEquals) {
    const NearestColour nearest(*Palette::create({{9, 9, 9}, {50, 60, 70}, {50, 60, 70}}));
    EXPECT_EQ(nearest.find(core::Rgb8{50, 60, 70}), 1);
    EXPECT_EQ(nearest.find(core::Rgb8{51, 60, 70}), 1);
}

TEST(NearestColour, NeverTakesTheTransparentEntry) {
    const Palette palette = *Palette::create({{0, 0, 0}, {255, 255, 255}}, core::PaletteIndex{0});
    EXPECT_EQ(NearestColour(palette).find(core::Rgb8{0, 0, 0}), 1);
}

TEST(NearestColour, GoesByOkLabNotByRgb) {
    // Dark blue is nearer to black in numbers, but looks nearer to blue.
    const NearestColour nearest(*Palette::create({{0, 0, 0}, {0, 0, 255}}));
    EXPECT_EQ(nearest.find(core::Rgb8{0, 0, 110}), 1);
}

TEST(NearestColour, CountsHuesForMoreIfAskedTo) {
    // A red that is much too dark, and a grey as light as what is wanted.
    const Palette palette = *Palette::create({{90, 0, 0}, {120, 120, 120}});
    EXPECT_EQ(NearestColour(palette).find(core::Rgb8{190, 70, 60}), 1);
    EXPECT_EQ(NearestColour(palette, 2).find(core::Rgb8{190, 70, 60}), 0);
}

TEST(NearestColour, IsWhatBruteForceFinds) {
    for (std::uint64_t seed = 1; seed <= 20; ++seed) {
        const std::vector<core::Rgb8> colours = randomColours(static_cast<int>(2 + seed * 5), seed);
        const NearestColour nearest(*Palette::create(colours));
        for (const core::Rgb8 wanted : randomColours(200, seed + 1000)) {
            const double found = core::squaredDistance(
                core::toOkLab(wanted), core::toOkLab(colours[nearest.find(wanted)]));
            for (const core::Rgb8 colour : colours)
                ASSERT_GE(core::squaredDistance(core::toOkLab(wanted), core::toOkLab(colour)),
                          found)
                    << "seed " << seed;
        }
    }
}

}  // namespace
}  // namespace pantile::picture
