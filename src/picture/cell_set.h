#pragma once

// CellSet: which cells of a grid an operation is about. Shapes and fills give one; symmetry repeats
// one; painting uses one. See docs/touch-up.md.

#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

#include "core/geometry.h"
#include "core/grid.h"

namespace pantile::picture {

/// Shape: some of the cells of a grid of `size`; everything outside is silently left out, which is
/// how shapes are clipped.
class CellSet {
public:
    explicit CellSet(core::Size size)
        : m_size(size),
          m_has(static_cast<std::size_t>(size.width) * static_cast<std::size_t>(size.height)) {}

    core::Size size() const { return m_size; }

    void add(core::Point cell) {
        if (isInside(cell)) m_has[offset(cell)] = 1;
    }

    bool has(core::Point cell) const { return isInside(cell) && m_has[offset(cell)] != 0; }

    /// Row by row from the top, each from the left.
    std::vector<core::Point> cells() const;

    bool operator==(const CellSet&) const = default;

private:
    bool isInside(core::Point p) const {
        return p.x >= 0 && p.y >= 0 && p.x < m_size.width && p.y < m_size.height;
    }

    std::size_t offset(core::Point p) const {
        return static_cast<std::size_t>(p.y) * static_cast<std::size_t>(m_size.width) +
               static_cast<std::size_t>(p.x);
    }

    core::Size m_size;
    std::vector<std::uint8_t> m_has;
};

/// `grid` with the cells of `where`, which is of its size, at `index`; with `only`, just those of
/// them that are at that index now.
core::Grid painted(core::Grid grid, const CellSet& where, core::PaletteIndex index,
                   std::optional<core::PaletteIndex> only = std::nullopt);

}  // namespace pantile::picture
