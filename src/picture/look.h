#pragma once

// Look: what a library keeps of a texture to find others that look alike without reading them all.
// See docs/look-alikes.md.

#include <array>
#include <cstdint>
#include <vector>

#include "core/grid.h"
#include "core/palette.h"
#include "picture/orientation.h"

namespace pantile::picture {

/// The mean lightness of each of 4x4 equal parts of the picture, row by row. Units: black to white
/// is 200.
using PartLights = std::array<std::uint8_t, 16>;

/// The means of the whole picture. Units: black to white is 200; the two axes of colour stand 100
/// higher than they are.
struct MeanTint {
    std::uint8_t lightness = 0;
    std::uint8_t greenToRed = 0;
    std::uint8_t blueToYellow = 0;
    std::uint8_t unpainted = 0;

    bool operator==(const MeanTint&) const = default;
};

struct Look {
    /// The same for textures that differ by other colours, turning, mirroring, shifting with
    /// wrap-around or a whole factor of size. Seldom the same for others.
    std::uint32_t shape = 0;
    MeanTint mean;
    PartLights lights{};

    bool operator==(const Look&) const = default;
};

/// Shape: all indices of the grid must be of the palette. Stored in libraries: computed by whole
/// numbers and correctly rounded operations, the same on every machine.
Look lookOf(const core::Grid& grid, const core::Palette& palette);

/// Cells joined to colours that look equal: for each cell the number of its colour, by the first
/// cell that has it from 0. All unpainted cells have one number of their own.
struct ColourClasses {
    static ColourClasses of(const core::Grid& grid, const core::Palette& palette);

    std::uint8_t at(int x, int y) const {
        return cells[static_cast<std::size_t>(y) * static_cast<std::size_t>(size.width) +
                     static_cast<std::size_t>(x)];
    }

    core::Size size;
    std::vector<std::uint8_t> cells;
    std::vector<int> uses;            ///< How many cells have each number.
    std::vector<core::Rgb8> colours;  ///< By number; that of unpainted cells says nothing.
    int unpainted = -1;               ///< The number of unpainted cells; -1: there are none.
};

/// How squares of equal cells may be taken back to one cell each, as far as all of them allow: a
/// grid shifted back by the offset, with wrap-around, and made smaller by the factor is its base.
struct Enlargement {
    int factor = 1;
    core::Point offset;  ///< 0 to factor - 1.
};

Enlargement enlargementOf(const ColourClasses& classes);

/// The base as it is after `enlargement`.
ColourClasses baseOf(const ColourClasses& classes, const Enlargement& enlargement);

/// A number for each cell that depends on what lies around it, with wrap-around, and on nothing
/// that Look::shape leaves out. Source: colour refinement, B. Weisfeiler and A. Leman, 1968. Shape:
/// as many as cells.
std::vector<std::uint32_t> surroundings(const ColourClasses& classes);

/// The greatest difference of two lightnesses of textures that are at most `within` apart
/// (look_alike.h), and of two other means; in the units of MeanTint.
int meanReach(int within);

/// Whether two textures may be at most `within` apart in one orientation or another.
bool mayBeNear(const MeanTint& p, const MeanTint& q, int within);

/// The same for the one orientation in which the lights stand: never no for two that are.
bool mayBeNear(const Look& p, const Look& q, int within);

/// The lights of the texture turned and mirrored.
PartLights orientedLights(const PartLights& lights, Orientation orientation);

}  // namespace pantile::picture
