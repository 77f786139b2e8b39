#pragma once

#include <array>
#include <span>

#include "core/geometry.h"

namespace pantile::picture {

enum class Neighbours {
    Four,   ///< The cells that share a side.
    Eight,  ///< Those that share a corner as well.
};

/// The steps to a cell's neighbours.
inline std::span<const core::Point> stepsTo(Neighbours neighbours) {
    static constexpr std::array<core::Point, 8> kSteps = {
        {{0, -1}, {-1, 0}, {1, 0}, {0, 1}, {-1, -1}, {1, -1}, {-1, 1}, {1, 1}}};
    return std::span(kSteps).first(neighbours == Neighbours::Four ? 4U : 8U);
}

}  // namespace pantile::picture
