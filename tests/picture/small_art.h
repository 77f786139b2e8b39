#pragma once

// Small art made by a rule, and enlargements of it, for the tests of finding enlarged art.

#include "core/geometry.h"
#include "core/pixels.h"
#include "picture/framing.h"
#include "picture/pictures.h"

namespace pantile::picture {

/// A few colours far apart in patches that differ from cell to cell: every line is used.
inline core::Picture smallArt(int width, int height, std::uint64_t seed) {
    tests::Random random(seed);
    const std::vector<core::Rgba8> table{{20, 28, 46, 255},   {90, 62, 40, 255},
                                         {214, 65, 41, 255},  {63, 150, 175, 255},
                                         {231, 177, 64, 255}, {239, 247, 249, 255}};
    core::Picture art{{{width, height}, {}}, core::IndexedPixels{table, {}}};
    for (int i = 0; i < width * height; ++i) {
        const bool asBefore = i % width != 0 && random.between(0, 2) == 0;
        const auto index = asBefore ? art.indexed->indices.back()
                                    : static_cast<std::uint8_t>(random.between(0, 5));
        art.indexed->indices.push_back(index);
        art.pixels.pixels.push_back(table[index]);
    }
    return art;
}

/// The pixel of `art` under each pixel's centre; also for sides that are no multiple.
inline core::Picture enlargedTo(const core::Picture& art, core::Size size) {
    core::Picture large{{size, {}}, core::IndexedPixels{art.indexed->table, {}}};
    for (int y = 0; y < size.height; ++y) {
        for (int x = 0; x < size.width; ++x) {
            const int column = (2 * x + 1) * art.pixels.size.width / (2 * size.width);
            const int row = (2 * y + 1) * art.pixels.size.height / (2 * size.height);
            large.pixels.pixels.push_back(art.pixels.at(column, row));
            large.indexed->indices.push_back(
                art.indexed
                    ->indices[static_cast<std::size_t>(row * art.pixels.size.width + column)]);
        }
    }
    return large;
}

/// Every channel off by up to `most` levels, and no indices: as a lossy format leaves it.
inline core::Picture withNoise(core::Picture picture, int most, std::uint64_t seed) {
    tests::Random random(seed);
    const auto off = [&](std::uint8_t value) {
        return static_cast<std::uint8_t>(std::clamp(value + random.between(-most, most), 0, 255));
    };
    for (core::Rgba8& pixel : picture.pixels.pixels)
        pixel = {off(pixel.r), off(pixel.g), off(pixel.b), pixel.a};
    picture.indexed.reset();
    return picture;
}

}  // namespace pantile::picture
