#pragma once

// Cells in the making: which entry each shows, changed one after another for the better. See
// docs/conversion.md section 7.3.

#include <cstddef>
#include <vector>

#include "core/palette.h"
#include "core/progress.h"
#include "core/result.h"
#include "picture/seen_difference.h"

namespace pantile::picture {

class CellSearch {
public:
    /// Shape: an index of `palette` for every cell of `wanted`; unpainted cells keep theirs.
    CellSearch(const CellColours& wanted, const core::Palette& palette,
               std::vector<core::PaletteIndex> start, double strength);

    const std::vector<core::PaletteIndex>& cells() const { return m_cells; }

    /// Linear light of every entry.
    const std::vector<core::LinearRgb>& colours() const { return m_colours; }

    /// Takes the loss anew and returns it: see SeenDifference.
    double refresh();

    /// Gives each painted cell in reading order the entry that lowers the loss most, if one does.
    /// Returns how many cells changed. Errors: Cancelled.
    core::Result<int> improveCells(const core::Progress& progress);

    /// Moves the entry's colour to where the loss is least with the cells as they are, within the
    /// colours of a screen. An entry that no cell shows stays.
    void improveColour(core::PaletteIndex entry);

private:
    bool improveCell(std::size_t cell);

    SeenDifference m_difference;
    std::vector<core::LinearRgb> m_colours;
    std::vector<core::PaletteIndex> m_choices;  // all but the transparent entry
    std::vector<core::PaletteIndex> m_cells;
    std::size_t m_rowLength;
};

}  // namespace pantile::picture
