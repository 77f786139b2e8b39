#pragma once

// Error diffusion over any kind of value: what a cell could not show is handed to cells that are
// still to come. See docs/conversion.md section 7.1.

#include <cassert>
#include <cstddef>
#include <optional>
#include <vector>

#include "core/colour_spaces.h"
#include "core/geometry.h"
#include "picture/diffusion_kernels.h"

namespace pantile::picture {

enum class Scan {
    Raster,      ///< Every row from left to right.
    Serpentine,  ///< Odd rows from right to left, the kernel mirrored: no slanting trails.
};

inline void addShare(double& value, double error, double share) {
    value += error * share;
}

inline void addShare(core::LinearRgb& value, const core::LinearRgb& error, double share) {
    value.r += error.r * share;
    value.g += error.g * share;
    value.b += error.b * share;
}

/// Visits the cells of `field` in order. `choose(cell, value)` decides what the cell at offset
/// `cell` shows and returns the error, as std::optional<Value>; without an error nothing is handed
/// on. Shape: field is size.width x size.height, row by row. Error that falls outside is lost.
template <typename Value, typename Choose>
void diffuseError(core::Size size, std::vector<Value> field, const DiffusionKernel& kernel,
                  Scan scan, Choose choose) {
    const auto offsetOf = [&size](int x, int y) {
        return static_cast<std::size_t>(y) * static_cast<std::size_t>(size.width) +
               static_cast<std::size_t>(x);
    };
    assert(field.size() == offsetOf(0, size.height));
    for (int y = 0; y < size.height; ++y) {
        const bool leftwards = scan == Scan::Serpentine && y % 2 == 1;
        for (int step = 0; step < size.width; ++step) {
            const int x = leftwards ? size.width - 1 - step : step;
            const std::size_t cell = offsetOf(x, y);
            const std::optional<Value> error = choose(cell, field[cell]);
            if (!error) continue;
            for (const DiffusionShare& share : kernel.shares) {
                const int toX = leftwards ? x - share.dx : x + share.dx;
                const int toY = y + share.dy;
                if (toX < 0 || toX >= size.width || toY >= size.height) continue;
                addShare(field[offsetOf(toX, toY)], *error,
                         static_cast<double>(share.weight) / kernel.divisor);
            }
        }
    }
}

}  // namespace pantile::picture
