#pragma once

// Small pictures for the tests of this folder.

#include <cstdint>
#include <vector>

#include "core/pixels.h"
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

}  // namespace pantile::picture
