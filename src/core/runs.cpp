#include "core/runs.h"

namespace pantile::core {

std::vector<Run> runsOf(std::span<const PaletteIndex> cells) {
    std::vector<Run> runs;
    for (const PaletteIndex cell : cells) {
        if (runs.empty() || runs.back().colour != cell) runs.push_back({cell, 0});
        ++runs.back().length;
    }
    return runs;
}

}  // namespace pantile::core
