#pragma once

// Keeps what belongs together in one load, without a further load.

#include <cstddef>
#include <span>
#include <vector>

#include "board/load_bins.h"
#include "board/pack_loads.h"
#include "core/progress.h"
#include "core/result.h"

namespace pantile::board {

/// In how many loads groups are found: each group counted once for each load that holds some of it.
std::size_t groupParts(std::span<const PackItem> items, const Loads& loads);

/// As many loads as `loads` or fewer, whose groups are in fewer parts: items move to another load
/// or change places with one of another load as long as that joins parts; begun from `loads` and
/// from a packing group by group, whichever ends better. In each load items ascend, and loads are
/// ordered as packLoads says. Errors: Cancelled.
core::Result<Loads> gatherGroups(std::span<const PackItem> items, const PackLimits& limits,
                                 Loads loads, const core::Progress& progress);

}  // namespace pantile::board
