#pragma once

// Small textures for the tests of this folder.

#include <algorithm>
#include <cstdint>
#include <string>
#include <vector>

#include "core/palette.h"
#include "support/random.h"

namespace pantile::picture {

/// Greys in even steps from black to white.
inline core::Palette greyPalette(int count) {
    std::vector<core::Rgb8> colours;
    for (int i = 0; i < count; ++i) {
        const auto value = static_cast<std::uint8_t>(255 * i / (count - 1));
        colours.push_back({value, value, value});
    }
    return *core::Palette::create(std::move(colours));
}

/// Each row of digits is a row of cells, each digit an index.
inline core::Grid gridOf(const std::vector<std::string>& rows) {
    std::vector<core::PaletteIndex> cells;
    for (const std::string& row : rows) {
        for (const char digit : row) cells.push_back(static_cast<core::PaletteIndex>(digit - '0'));
    }
    return *core::Grid::create(static_cast<int>(rows.front().size()), static_cast<int>(rows.size()),
                               std::move(cells));
}

/// Every cell one of `count` indices, independent of the others.
inline core::Grid randomGrid(core::Size size, int count, tests::Random& random) {
    std::vector<core::PaletteIndex> cells;
    for (int i = 0; i < size.width * size.height; ++i)
        cells.push_back(static_cast<core::PaletteIndex>(random.between(0, count - 1)));
    return *core::Grid::create(size.width, size.height, std::move(cells));
}

/// Shingle: pebbles of a few cells, each of one of `count` indices, and a light that grows to the
/// right and downwards, so that the edges do not meet.
inline core::Grid shingle(core::Size size, int count, tests::Random& random) {
    struct Pebble {
        int x = 0;
        int y = 0;
        int shade = 0;
    };

    std::vector<Pebble> pebbles;
    for (int i = 0; i < size.width * size.height / 8 + 1; ++i)
        pebbles.push_back({random.between(0, size.width - 1), random.between(0, size.height - 1),
                           random.between(0, count / 2)});
    std::vector<core::PaletteIndex> cells;
    for (int y = 0; y < size.height; ++y) {
        for (int x = 0; x < size.width; ++x) {
            const auto squared = [x, y](const Pebble& p) {
                return (p.x - x) * (p.x - x) + (p.y - y) * (p.y - y);
            };
            const Pebble* nearest = &pebbles.front();
            for (const Pebble& pebble : pebbles) {
                if (squared(pebble) < squared(*nearest)) nearest = &pebble;
            }
            const int light = (count / 2 - 1) * (x + y) / std::max(1, size.width + size.height - 2);
            cells.push_back(static_cast<core::PaletteIndex>(nearest->shade + light));
        }
    }
    return *core::Grid::create(size.width, size.height, std::move(cells));
}

}  // namespace pantile::picture
