#pragma once

// Small pictures for the tests of this folder.

#include <cstdint>
#include <optional>
#include <vector>

#include "core/pixels.h"
#include "picture/linear_picture.h"
#include "support/random.h"

namespace pantile::picture {

inline core::Rgba8 grey(int value, int alpha = 255) {
    const auto byte = static_cast<std::uint8_t>(value);
    return {byte, byte, byte, static_cast<std::uint8_t>(alpha)};
}

inline core::Pixels pixelsOf(int width, int height, std::vector<core::Rgba8> pixels) {
    return {{width, height}, std::move(pixels)};
}

inline core::Pixels flat(int width, int height, core::Rgba8 colour) {
    return pixelsOf(width, height,
                    std::vector<core::Rgba8>(static_cast<std::size_t>(width * height), colour));
}

enum class Alpha { Opaque, Random };

inline core::Pixels randomPixels(int width, int height, std::uint64_t seed,
                                 Alpha alpha = Alpha::Opaque) {
    tests::Random random(seed);
    core::Pixels pixels{{width, height}, {}};
    const auto byte = [&random] { return static_cast<std::uint8_t>(random.between(0, 255)); };
    for (int i = 0; i < width * height; ++i) {
        core::Rgba8 pixel{byte(), byte(), byte(), 255};
        if (alpha == Alpha::Random) pixel.a = byte();
        pixels.pixels.push_back(pixel);
    }
    return pixels;
}

inline std::vector<core::Rgb8> randomColours(int count, std::uint64_t seed) {
    std::vector<core::Rgb8> colours;
    for (const core::Rgba8& pixel : randomPixels(count, 1, seed).pixels)
        colours.push_back(pixel.rgb());
    return colours;
}

/// The sixteen colours of CSS level 1, section 6.3.
inline std::vector<core::Rgb8> cssColours() {
    return {{0, 0, 0},   {192, 192, 192}, {128, 128, 128}, {255, 255, 255},
            {128, 0, 0}, {255, 0, 0},     {128, 0, 128},   {255, 0, 255},
            {0, 128, 0}, {0, 255, 0},     {128, 128, 0},   {255, 255, 0},
            {0, 0, 128}, {0, 0, 255},     {0, 128, 128},   {0, 255, 255}};
}

inline CellColours flatCells(core::Size size, core::LinearRgb colour) {
    return {size, std::vector<std::optional<core::LinearRgb>>(
                      static_cast<std::size_t>(size.width * size.height), colour)};
}

inline CellColours cellsOf(const core::Pixels& pixels) {
    CellColours cells{pixels.size, {}};
    for (const core::Rgba8& pixel : pixels.pixels)
        cells.cells.emplace_back(core::toLinear(pixel.rgb()));
    return cells;
}

/// Colours that change slowly over the picture, another for every seed, as paintings have them.
inline CellColours hazeCells(core::Size size, std::uint64_t seed) {
    tests::Random random(seed);
    const auto corner = [&random] {
        const auto light = [&random] { return random.between(0, 100) / 100.0; };
        return core::LinearRgb{light(), light(), light()};
    };
    const core::LinearRgb left = corner();
    const core::LinearRgb right = corner();
    const core::LinearRgb bottom = corner();
    CellColours cells{size, {}};
    for (int y = 0; y < size.height; ++y) {
        for (int x = 0; x < size.width; ++x) {
            const double down = static_cast<double>(y) / size.height;
            const double along = (1 - down) * x / size.width;
            const double rest = 1 - down - along;
            cells.cells.emplace_back(
                core::LinearRgb{rest * left.r + along * right.r + down * bottom.r,
                                rest * left.g + along * right.g + down * bottom.g,
                                rest * left.b + along * right.b + down * bottom.b});
        }
    }
    return cells;
}

}  // namespace pantile::picture
