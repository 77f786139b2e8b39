#include "image_files/write_png.h"

#include <algorithm>

#include <gtest/gtest.h>

#include "image_files/read_image.h"
#include "support/matchers.h"
#include "support/png_bytes.h"
#include "support/random.h"

namespace pantile::image_files {
namespace {

using core::ErrorKind;
using core::Grid;
using core::Palette;
using core::Rgb8;
using tests::failsWith;
using tests::isOk;

std::uint8_t randomByte(tests::Random& random) {
    return static_cast<std::uint8_t>(random.between(0, 255));
}

Palette randomPalette(tests::Random& random, int colours) {
    std::vector<Rgb8> list;
    for (int i = 0; i < colours; ++i)
        list.push_back({randomByte(random), randomByte(random), randomByte(random)});
    std::optional<core::PaletteIndex> transparent;
    if (random.between(0, 1) == 1)
        transparent = static_cast<core::PaletteIndex>(random.between(0, colours - 1));
    return *Palette::create(list, transparent);
}

Grid randomGrid(tests::Random& random, int colours) {
    const int width = random.between(1, 40);
    const int height = random.between(1, 40);
    Grid grid = *Grid::filled(width, height, 0);
    for (int y = 0; y < height; ++y) {
        for (int x = 0; x < width; ++x)
            grid.set(x, y, static_cast<core::PaletteIndex>(random.between(0, colours - 1)));
    }
    return grid;
}

TEST(WritePng, KeepsPaletteAndIndicesToTheBit) {
    for (const int colours : {2, 3, 4, 5, 16, 17, 255, 256}) {
        for (std::uint64_t seed = 1; seed <= 20; ++seed) {
            tests::Random random(seed);
            const Palette palette = randomPalette(random, colours);
            const Grid grid = randomGrid(random, colours);
            const auto png = encodePng(grid, palette);
            ASSERT_THAT(png, isOk());
            const auto picture = readImageBytes(*png, "written.png");
            ASSERT_THAT(picture, isOk());
            ASSERT_TRUE(picture->indexed);
            EXPECT_TRUE(std::ranges::equal(picture->indexed->indices, grid.cells()))
                << colours << " colours, seed " << seed;
            ASSERT_EQ(picture->indexed->table.size(), static_cast<std::size_t>(colours));
            for (int i = 0; i < colours; ++i) {
                const auto index = static_cast<core::PaletteIndex>(i);
                const core::Rgba8 entry = picture->indexed->table[index];
                ASSERT_EQ(entry.rgb(), palette[index]) << colours << " colours, seed " << seed;
                ASSERT_EQ(entry.a, palette.transparent() == index ? 0 : 255);
            }
        }
    }
}

TEST(WritePng, KeepsAPaletteOfGreysIndexed) {
    const Palette greys =
        *Palette::create({{0, 0, 0}, {85, 85, 85}, {170, 170, 170}, {255, 255, 255}});
    const auto picture =
        readImageBytes(*encodePng(*Grid::create(2, 1, {3, 1}), greys), "greys.png");
    ASSERT_THAT(picture, isOk());
    ASSERT_TRUE(picture->indexed);
    EXPECT_EQ(picture->indexed->indices, (std::vector<std::uint8_t>{3, 1}));
}

TEST(WritePng, GivesPixelsBackWithAndWithoutAlpha) {
    for (std::uint64_t seed = 1; seed <= 20; ++seed) {
        tests::Random random(seed);
        core::Pixels pixels{{random.between(1, 30), random.between(1, 30)}, {}};
        for (int i = 0; i < pixels.size.width * pixels.size.height; ++i)
            pixels.pixels.push_back({randomByte(random), randomByte(random), randomByte(random),
                                     seed % 2 == 0 ? std::uint8_t{255} : randomByte(random)});
        const auto png = encodePng(pixels);
        ASSERT_THAT(png, isOk());
        const auto picture = readImageBytes(*png, "pixels.png");
        ASSERT_THAT(picture, isOk());
        EXPECT_FALSE(picture->indexed);
        EXPECT_EQ(picture->pixels.size, pixels.size);
        EXPECT_EQ(picture->pixels.pixels, pixels.pixels) << "seed " << seed;
    }
}

TEST(WritePng, HoldsNothingButThePicture) {
    // IHDR 25, PLTE 12 + 6, IDAT 12 + its data, IEND 12 bytes: no text, no time, no resolution.
    const auto png = encodePng(*Grid::filled(1, 1, 0), *Palette::create({{1, 2, 3}, {4, 5, 6}}));
    ASSERT_THAT(png, isOk());
    constexpr std::size_t kIdatLengthAt = 8 + 25 + 18;
    const std::size_t dataBytes = (*png)[kIdatLengthAt + 3];
    EXPECT_EQ(png->size(), kIdatLengthAt + 12 + dataBytes + 12);
    EXPECT_EQ(*png, *encodePng(*Grid::filled(1, 1, 0), *Palette::create({{1, 2, 3}, {4, 5, 6}})));
}

TEST(WritePng, RefusesIndicesOutsideThePalette) {
    EXPECT_THAT(encodePng(*Grid::filled(2, 2, 2), *Palette::create({{}, {}})),
                failsWith(ErrorKind::InvalidInput, "index 2"));
}

TEST(WritePng, RefusesPixelsThatDoNotFillTheSize) {
    EXPECT_THAT(encodePng(core::Pixels{{2, 2}, {{}, {}, {}}}),
                failsWith(ErrorKind::InvalidInput, "3 pixels"));
    EXPECT_THAT(encodePng(core::Pixels{}), failsWith(ErrorKind::InvalidInput, "0x0"));
    core::Pixels wide{{kMaxImageSide + 1, 1}, {}};
    wide.pixels.resize(static_cast<std::size_t>(kMaxImageSide) + 1);
    EXPECT_THAT(encodePng(wide), failsWith(ErrorKind::TooLarge, "16385x1"));
}

}  // namespace
}  // namespace pantile::image_files
