#pragma once

// How a drawing time is rounded before a person reads it: the same in every face.

#include <cstdint>
#include <string>

namespace pantile::core {

/// From one minute on whole seconds; below, tenths of a second. Both are rounded half up.
struct RoundedDuration {
    std::int64_t minutes = 0;
    int seconds = 0;  ///< 0..59
    int tenths = 0;   ///< 0..9; 0 from one minute on.

    bool operator==(const RoundedDuration&) const = default;
};

/// Shape: `milliseconds` is not negative.
RoundedDuration roundedDuration(std::int64_t milliseconds);

/// "8.4 s", "2 min 0 s". Shape: `milliseconds` is not negative.
std::string spokenTime(std::int64_t milliseconds);

}  // namespace pantile::core
