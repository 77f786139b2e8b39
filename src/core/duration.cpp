#include "core/duration.h"

namespace pantile::core {

RoundedDuration roundedDuration(std::int64_t milliseconds) {
    constexpr std::int64_t kTenthsAMinute = 600;
    const std::int64_t tenths = (milliseconds + 50) / 100;
    if (tenths < kTenthsAMinute)
        return {0, static_cast<int>(tenths / 10), static_cast<int>(tenths % 10)};
    const std::int64_t seconds = (milliseconds + 500) / 1000;
    return {seconds / 60, static_cast<int>(seconds % 60), 0};
}

std::string spokenTime(std::int64_t milliseconds) {
    const RoundedDuration time = roundedDuration(milliseconds);
    if (time.minutes > 0)
        return std::to_string(time.minutes) + " min " + std::to_string(time.seconds) + " s";
    return std::to_string(time.seconds) + "." + std::to_string(time.tenths) + " s";
}

}  // namespace pantile::core
