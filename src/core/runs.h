#pragma once

// Runs: equal cells that follow one another in reading order. Codes, loads and strokes are made of
// them.

#include <cstdint>
#include <span>
#include <vector>

#include "core/grid.h"

namespace pantile::core {

struct Run {
    PaletteIndex colour = 0;
    std::uint32_t length = 0;  ///< In cells, at least 1.
    bool operator==(const Run&) const = default;
};

/// The longest runs of `cells` in order; a run does not stop at the end of a row.
std::vector<Run> runsOf(std::span<const PaletteIndex> cells);

}  // namespace pantile::core
