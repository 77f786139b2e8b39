#pragma once

// How different two palette entries look, in whole numbers: for decisions about cells, which must
// come out the same on every machine. See docs/seams-and-colours.md section 1.

#include <cstddef>
#include <cstdint>
#include <vector>

#include "core/palette.h"

namespace pantile::picture {

/// Units: ten-thousandths of OKLab, in which black and white are 10000 apart and about 200 is just
/// visible.
class CellDifference {
public:
    explicit CellDifference(const core::Palette& palette);

    /// The square of the distance: 0 for equal colours, symmetric. An unpainted cell is as far from
    /// a painted one as black from white. Both must be indices of the palette.
    std::int64_t squared(core::PaletteIndex p, core::PaletteIndex q) const {
        return m_squared[offset(p, q)];
    }

    /// Its root, without the fraction.
    std::int64_t distance(core::PaletteIndex p, core::PaletteIndex q) const {
        return m_distances[offset(p, q)];
    }

private:
    std::size_t offset(core::PaletteIndex p, core::PaletteIndex q) const {
        return static_cast<std::size_t>(p) * m_size + q;
    }

    std::size_t m_size;
    std::vector<std::int64_t> m_squared;
    std::vector<std::int64_t> m_distances;
};

}  // namespace pantile::picture
