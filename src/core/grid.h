#pragma once

// Grid: the cells of a texture, each a palette index. It knows nothing of the palette.

#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

#include "core/geometry.h"
#include "core/result.h"

namespace pantile::core {

using PaletteIndex = std::uint8_t;

inline constexpr int kMaxGridSide = 256;

/// Shape: width and height are 1..256; cells stand row by row from the top, each row left to right.
class Grid {
public:
    /// Errors: InvalidInput if a side is outside 1..256 or `cells` does not hold width x height
    /// indices.
    static Result<Grid> create(int width, int height, std::vector<PaletteIndex> cells);

    /// A grid with every cell at `index`. Errors: as create.
    static Result<Grid> filled(int width, int height, PaletteIndex index);

    int width() const { return m_width; }

    int height() const { return m_height; }

    Size size() const { return {m_width, m_height}; }

    std::size_t cellCount() const { return m_cells.size(); }

    std::span<const PaletteIndex> cells() const { return m_cells; }

    bool contains(Point p) const { return p.x >= 0 && p.y >= 0 && p.x < m_width && p.y < m_height; }

    /// The index at column x, row y, which must lie on the grid.
    PaletteIndex at(int x, int y) const { return m_cells[offset(x, y)]; }

    PaletteIndex at(Point p) const { return at(p.x, p.y); }

    void set(int x, int y, PaletteIndex index) { m_cells[offset(x, y)] = index; }

    /// The largest index that occurs.
    PaletteIndex largestIndex() const;

    bool operator==(const Grid&) const = default;

private:
    Grid(int width, int height, std::vector<PaletteIndex> cells)
        : m_width(width), m_height(height), m_cells(std::move(cells)) {}

    std::size_t offset(int x, int y) const {
        assert(contains({x, y}));
        return static_cast<std::size_t>(y) * static_cast<std::size_t>(m_width) +
               static_cast<std::size_t>(x);
    }

    int m_width;
    int m_height;
    std::vector<PaletteIndex> m_cells;
};

/// Errors: InvalidInput, with the two sides named, if a side is outside 1..256.
Result<void> checkGridSize(int width, int height);

}  // namespace pantile::core
