#pragma once

// OKLab in whole numbers, so that whatever is decided by it comes out the same on every machine.

#include <cmath>
#include <cstdint>

#include "core/colour_spaces.h"

namespace pantile::picture {

/// Units: ten-thousandths, in which black and white are 10000 apart and about 200 is just visible.
struct StepLab {
    std::int64_t l = 0;
    std::int64_t a = 0;
    std::int64_t b = 0;

    bool operator==(const StepLab&) const = default;
};

inline constexpr std::int64_t kLabSteps = 10'000;

inline StepLab toSteps(core::Rgb8 colour) {
    const auto inSteps = [](double value) {
        return static_cast<std::int64_t>(std::floor(value * static_cast<double>(kLabSteps) + 0.5));
    };
    const core::OkLab lab = core::toOkLab(colour);
    return {inSteps(lab.l), inSteps(lab.a), inSteps(lab.b)};
}

inline std::int64_t squaredDistance(const StepLab& p, const StepLab& q) {
    const std::int64_t dl = p.l - q.l;
    const std::int64_t da = p.a - q.a;
    const std::int64_t db = p.b - q.b;
    return dl * dl + da * da + db * db;
}

/// IEEE 754 rounds the square root correctly, and squares are far below 2^53.
inline std::int64_t wholeRoot(std::int64_t square) {
    return static_cast<std::int64_t>(std::sqrt(static_cast<double>(square)));
}

}  // namespace pantile::picture
