#pragma once

// PointerTiming: how fast a board may move and click without the toolkit losing anything.

#include <compare>

#include "core/result.h"

namespace pantile::core {

/// Units: milliseconds, and counts of pointer movement for each report.
struct PointerTiming {
    int reportIntervalMs = 8;
    int maxStepUp = 127;  ///< Largest move on an axis with the pen up; 127 is the protocol's limit.
    int maxStepDown = 8;  ///< The same with the pen down.
    int pressMs = 33;     ///< Held still after the button goes down.
    int releaseMs = 33;   ///< Held still after it goes up.
    int settleMs = 100;   ///< Extra wait after a colour was picked.

    auto operator<=>(const PointerTiming&) const = default;

    /// The default: what the hobby's careful practice uses.
    static PointerTiming careful() { return {}; }

    /// For toolkits that keep up with short clicks.
    static PointerTiming quick() { return {8, 127, 8, 16, 16, 50}; }
};

/// Errors: InvalidInput naming the value: interval and dwells 1..1000 ms, settle 0..5000 ms,
/// steps 1..127.
Result<void> checkTiming(const PointerTiming& timing);

}  // namespace pantile::core
