#include "core/timing.h"

#include <string>

#include "core/range_check.h"

namespace pantile::core {

Result<void> checkTiming(const PointerTiming& timing) {
    PANTILE_RETURN_IF_ERROR(
        checkRange("the report interval in ms", timing.reportIntervalMs, 1, 1000));
    PANTILE_RETURN_IF_ERROR(
        checkRange("the largest step with the pen up", timing.maxStepUp, 1, 127));
    PANTILE_RETURN_IF_ERROR(
        checkRange("the largest step with the pen down", timing.maxStepDown, 1, 127));
    PANTILE_RETURN_IF_ERROR(checkRange("the press time in ms", timing.pressMs, 1, 1000));
    PANTILE_RETURN_IF_ERROR(checkRange("the release time in ms", timing.releaseMs, 1, 1000));
    return checkRange("the settle time in ms", timing.settleMs, 0, 5000);
}

}  // namespace pantile::core
