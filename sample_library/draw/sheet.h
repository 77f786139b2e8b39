#pragma once

// Sheet: a grid of inks to draw on, and the tools to draw with. A sheet that wraps takes every
// stroke over its edges back in on the other side, so that it tiles without a seam.

#include <cstddef>
#include <functional>
#include <initializer_list>
#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include "core/geometry.h"
#include "core/grid.h"
#include "draw/chance.h"
#include "draw/field.h"
#include "draw/ink.h"

namespace pantile::sample_art {

/// Which edges of a texture meet their opposites when it repeats.
enum class Tiles { Both, Across, No };

class Sheet {
public:
    Sheet(int side, Tiles tiles, Ink ground = Ink::Night)
        : m_side(side),
          m_tiles(tiles),
          m_inks(static_cast<std::size_t>(side) * static_cast<std::size_t>(side), ground) {}

    int side() const { return m_side; }

    Tiles tiles() const { return m_tiles; }

    /// Off a cut edge: the ink of the nearest cell.
    Ink at(int x, int y) const;

    /// Off a cut edge nothing happens.
    void set(int x, int y, Ink ink);

    core::Grid toGrid() const;

private:
    std::size_t offset(int column, int row) const {
        return static_cast<std::size_t>(row) * static_cast<std::size_t>(m_side) +
               static_cast<std::size_t>(column);
    }

    int m_side;
    Tiles m_tiles;
    std::vector<Ink> m_inks;
};

/// Inks from dark to light.
using Ramp = std::initializer_list<Ink>;

/// The ink at `value` (0..1) of the way up the ramp; `dither` 0..1 mixes neighbours by an ordered
/// 4x4 pattern.
Ink shade(std::span<const Ink> ramp, double value, core::Point cell, double dither);
Ink shade(Ramp ramp, double value, core::Point cell = {}, double dither = 0.0);

/// Calls `paint` for each cell; nullopt leaves the cell as it is.
void paintCells(Sheet& sheet, const std::function<std::optional<Ink>(int x, int y)>& paint);

void line(Sheet& sheet, core::Point from, core::Point to, Ink ink);
void fillRectangle(Sheet& sheet, core::Point corner, core::Size size, Ink ink);
void disc(Sheet& sheet, Place centre, double radius, Ink ink);
void ellipse(Sheet& sheet, Place centre, Place radii, Ink ink);

/// Draws a ball lit from the top left: inks of `ramp` from the shaded to the lit side.
void ball(Sheet& sheet, Place centre, double radius, std::span<const Ink> ramp);

/// A laid rope along `path`, whose places lie less than a cell apart.
void drawRope(Sheet& sheet, const std::vector<Place>& path, double radius);

/// Stamps rows of letters; '.' leaves the cell as it is.
/// Shape: N night, D slate, G stone, M mist, W foam; T tar, B bark, A wet sand, Y dry sand;
/// k, K kelp; u, U sea; r, R red; O brass; '_' clear.
void stamp(Sheet& sheet, core::Point corner, std::initializer_list<std::string_view> rows);

/// Draws `ink` on every clear cell that touches a painted one by an edge.
void outline(Sheet& sheet, Ink ink);

}  // namespace pantile::sample_art
