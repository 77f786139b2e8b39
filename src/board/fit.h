#pragma once

// Which textures a board should carry: the set that is worth most within its slots, its bytes and,
// if asked, the time for drawing.

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/progress.h"
#include "core/result.h"

namespace pantile::board {

/// Shape: each figure is 0..kMaxFitFigure.
struct FitItem {
    std::int64_t worth = 0;
    std::int64_t bytes = 0;
    std::int64_t milliseconds = 0;
    bool must = false;  ///< It has to be in, whatever it is worth.
};

inline constexpr std::int64_t kMaxFitFigure = (std::int64_t{1} << 32U) - 1;
inline constexpr std::size_t kMaxFitItems = 65536;

/// Shape: slots is 0..255, the others are not negative.
struct FitLimits {
    int slots = 0;
    std::int64_t bytes = 0;
    std::optional<std::int64_t> milliseconds;
};

struct LeftOut {
    std::size_t item = 0;
    std::string reason;  ///< A clause such as "needs 412 bytes more than the load has left".
    bool operator==(const LeftOut&) const = default;
};

struct FitChoice {
    std::vector<std::size_t> chosen;  ///< Ascending.
    std::int64_t worth = 0;
    std::int64_t bytes = 0;
    std::int64_t milliseconds = 0;
    bool provenBest = false;
    std::vector<LeftOut> leftOut;  ///< All the others, ascending.
};

/// The set of greatest worth that holds every `must` and keeps within `limits`. Among sets of equal
/// worth: less time, then fewer bytes, then the set that has the earliest item in which two differ.
/// Errors: InvalidInput for a figure out of its range; TooLarge for more than kMaxFitItems items;
/// DoesNotFit, naming the musts, if they alone break a limit; Cancelled.
/// Cost: usually well under a second for 200 items; exponential at worst, so it stops after a fixed
/// number of steps and then says `provenBest` false. The answer hangs on no clock.
core::Result<FitChoice> chooseBest(std::span<const FitItem> items, const FitLimits& limits,
                                   const core::Progress& progress = {});

}  // namespace pantile::board
