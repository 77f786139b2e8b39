#pragma once

// Which textures a board should carry, and each in which variant: the set that is worth most within
// its slots, its bytes and, if asked, the time for drawing.

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/progress.h"
#include "core/result.h"

namespace pantile::board {

/// One way in which a texture may lie in a load. Shape: each figure is 0..kMaxFitFigure.
struct FitVariant {
    std::int64_t bytes = 0;
    std::int64_t milliseconds = 0;

    bool operator==(const FitVariant&) const = default;
};

/// A texture that may be chosen, in one of its variants.
/// Shape: worth is 0..kMaxFitFigure; there are 1 to kMaxFitVariants variants.
struct FitItem {
    std::int64_t worth = 0;
    std::vector<FitVariant> variants;
    bool must = false;       ///< It has to be in, whatever it is worth.
    int bundle = kNoBundle;  ///< Items of one bundle are all in or all out.
    std::string name = {};   ///< What messages call it, such as "17 Kelp bed".

    static constexpr int kNoBundle = -1;
};

inline constexpr std::int64_t kMaxFitFigure = (std::int64_t{1} << 32U) - 1;
inline constexpr std::size_t kMaxFitItems = 65536;
inline constexpr std::size_t kMaxFitVariants = 16;

/// Shape: slots is 0..255, the others are not negative.
struct FitLimits {
    int slots = 0;
    std::int64_t bytes = 0;
    std::optional<std::int64_t> milliseconds;
};

struct FitPick {
    std::size_t item = 0;
    std::size_t variant = 0;

    bool operator==(const FitPick&) const = default;
};

/// What has to go of the chosen so that a texture fits in: the least worth, then the fewest.
struct Exchange {
    std::vector<std::size_t> takeOut;  ///< Ascending.
    std::int64_t worth = 0;            ///< Of these together.
    bool otherVariants = false;        ///< Some that stay have to lie there in another variant.
    bool provenLeast = true;

    bool operator==(const Exchange&) const = default;
};

/// By how much the limits are too low for a texture beside all that is chosen, all in whichever
/// variants: least time first, then least bytes.
struct Shortage {
    int slots = 0;
    std::int64_t bytes = 0;
    std::int64_t milliseconds = 0;

    bool any() const { return slots > 0 || bytes > 0 || milliseconds > 0; }

    bool operator==(const Shortage&) const = default;
};

/// A texture left out, with all of its bundle.
struct LeftOut {
    std::size_t item = 0;
    std::string reason;  ///< A clause such as "needs 412 bytes more than the load has left".
    Shortage shortage;
    std::optional<Exchange> exchange;  ///< Empty if no exchange helps, or too many are left out.

    bool operator==(const LeftOut&) const = default;
};

struct FitChoice {
    std::vector<FitPick> chosen;  ///< By item, ascending.
    std::int64_t worth = 0;
    std::int64_t bytes = 0;
    std::int64_t milliseconds = 0;
    bool provenBest = false;
    std::int64_t worthBound = 0;   ///< No set is worth more; `worth` itself where that is proven.
    std::vector<LeftOut> leftOut;  ///< All the others, ascending.
};

/// The set of greatest worth that holds every `must`, keeps bundles whole, and keeps within
/// `limits`. Among sets of equal worth: less time, then fewer bytes, then by the first item in
/// which two differ, in before out and the quicker variant before the slower. Errors: InvalidInput
/// for a figure out of its range; TooLarge for more than kMaxFitItems items; DoesNotFit, naming the
/// musts, if they alone break a limit; Cancelled. Cost: usually well under a second for 200 items;
/// exponential at worst, so it stops after a fixed number of steps and then says `provenBest`
/// false. The answer hangs on no clock.
core::Result<FitChoice> chooseBest(std::span<const FitItem> items, const FitLimits& limits,
                                   const core::Progress& progress = {});

}  // namespace pantile::board
