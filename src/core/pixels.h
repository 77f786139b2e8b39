#pragma once

// Pictures as they come from files: what image reading gives and what becomes a grid.

#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

#include "core/coefficient_planes.h"
#include "core/colour.h"
#include "core/geometry.h"

namespace pantile::core {

struct Rgba8 {
    std::uint8_t r = 0;
    std::uint8_t g = 0;
    std::uint8_t b = 0;
    std::uint8_t a = 255;
    auto operator<=>(const Rgba8&) const = default;

    Rgb8 rgb() const { return {r, g, b}; }
};

/// Shape: size.width x size.height pixels, row by row from the top. Units: 8-bit sRGB, alpha not
/// multiplied in. Sides are at least 1.
struct Pixels {
    Size size;
    std::vector<Rgba8> pixels;

    const Rgba8& at(int x, int y) const { return pixels[offset(x, y)]; }

    Rgba8& at(int x, int y) { return pixels[offset(x, y)]; }

private:
    std::size_t offset(int x, int y) const {
        return static_cast<std::size_t>(y) * static_cast<std::size_t>(size.width) +
               static_cast<std::size_t>(x);
    }
};

/// The palette and indices of an indexed picture, exactly as the file has them.
struct IndexedPixels {
    std::vector<Rgba8> table;
    std::vector<std::uint8_t> indices;  ///< As many as there are pixels, each inside the table.
};

struct Picture {
    Pixels pixels;
    std::optional<IndexedPixels> indexed;  ///< Set if the file itself stores indices.
    /// Set for a JPEG file whose pixels are those of its planes and no more.
    std::optional<CoefficientPlanes> planes{};
};

}  // namespace pantile::core
