#include "picture/optimal_dither.h"

#include <cstddef>

#include "picture/cell_search.h"
#include "picture/dither.h"

namespace pantile::picture {
namespace {

using core::PaletteIndex;
using core::Result;

// Nearly all is gained in the first six; a fixed bound keeps the result the same on every machine.
constexpr int kMostPasses = 12;

}  // namespace

Result<std::vector<PaletteIndex>> optimalDither(const CellColours& wanted,
                                                const core::Palette& palette, double strength,
                                                const core::Progress& progress) {
    CellSearch search(wanted, palette, ditherToPalette(wanted, palette, kFloydSteinberg, strength),
                      strength);
    std::vector<PaletteIndex> best = search.cells();
    double least = search.refresh();
    for (int pass = 0; pass < kMostPasses; ++pass) {
        PANTILE_ASSIGN_OR_RETURN(const int changed, search.improveCells(progress));
        if (changed == 0) break;
        // Between refreshes the loss is taken for squares, so a pass can end worse.
        const double loss = search.refresh();
        if (loss < least) {
            least = loss;
            best = search.cells();
        }
    }
    return best;
}

double optimalDitherLoss(const CellColours& wanted, const core::Palette& palette,
                         const std::vector<PaletteIndex>& cells, double strength) {
    return CellSearch(wanted, palette, cells, strength).refresh();
}

}  // namespace pantile::picture
