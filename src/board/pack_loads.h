#pragma once

// All of some textures over as few loads as possible: bin packing with slots and bytes.

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "core/progress.h"
#include "core/result.h"

namespace pantile::board {

/// A texture, or several that have to stay in one load: their sums.
/// Shape: figures are 0..kMaxFitFigure, slots 1..255. Items that share a group are kept together
/// where that costs no further load.
struct PackItem {
    std::int64_t bytes = 0;
    std::vector<int> groups = {};
    int slots = 1;
    std::int64_t milliseconds = 0;
    std::int64_t worth = 0;
};

inline constexpr std::size_t kMaxPackItems = 20000;

/// What each load holds at most. Shape: slots 1..255, the others 0..kMaxFitFigure.
struct PackLimits {
    int slots = 1;
    std::int64_t bytes = 0;
    std::optional<std::int64_t> milliseconds = {};
};

struct Packing {
    std::vector<std::vector<std::size_t>> loads;  ///< Items ascending; none is empty.
    std::size_t fewest = 0;                       ///< No packing has fewer loads than this.

    bool provenFewest() const { return loads.size() == fewest; }
};

/// Every item in one load. The first load is the one that is worth most; after each follows the one
/// that shares most groups with it, of these the one that is worth most, then the earliest.
/// Errors: InvalidInput for a figure out of range; TooLarge for more than kMaxPackItems; DoesNotFit
/// naming an item, from 0, that is too large for a load; Cancelled.
/// Cost: stops after a fixed number of steps, a second at most, and then `fewest` may be less than
/// the loads. The answer hangs on no clock.
core::Result<Packing> packLoads(std::span<const PackItem> items, const PackLimits& limits,
                                const core::Progress& progress = {});

/// A number of loads below which no packing can stay.
/// Source: bound L2 of S. Martello and P. Toth, 'Lower bounds and reduction procedures for the bin
/// packing problem', Discrete Applied Mathematics 28, 1990; and the plain bound by slots.
/// Shape: as packLoads; no item is larger than a load.
std::size_t fewestLoads(std::span<const PackItem> items, const PackLimits& limits);

}  // namespace pantile::board
