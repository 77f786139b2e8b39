#include "picture/picture_difference.h"

#include <cassert>
#include <cstddef>

#include "core/colour_difference.h"
#include "picture/eye_blur.h"

namespace pantile::picture {

CellColours coloursShown(const core::Grid& grid, const core::Palette& palette) {
    CellColours shown{grid.size(), {}};
    shown.cells.reserve(grid.cells().size());
    for (const core::PaletteIndex index : grid.cells()) {
        assert(index < palette.size());
        shown.cells.push_back(palette.transparent() == index
                                  ? std::nullopt
                                  : std::optional(core::toLinear(palette[index])));
    }
    return shown;
}

double meanDifference(const CellColours& wanted, const CellColours& shown) {
    assert(wanted.cells.size() == shown.cells.size());
    double sum = 0;
    int cells = 0;
    for (std::size_t i = 0; i < wanted.cells.size(); ++i) {
        if (!wanted.cells[i] || !shown.cells[i]) continue;
        sum += core::ciede2000(core::toLab(core::toXyz(*wanted.cells[i])),
                               core::toLab(core::toXyz(*shown.cells[i])));
        ++cells;
    }
    return cells > 0 ? sum / cells : 0;
}

double meanPerceivedDifference(const CellColours& wanted, const CellColours& shown) {
    return meanDifference(blurredByEye(wanted), blurredByEye(shown));
}

}  // namespace pantile::picture
