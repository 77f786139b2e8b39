#pragma once

// The eight ways in which a texture may be turned and mirrored.

#include <array>

#include "core/grid.h"
#include "picture/transform.h"

namespace pantile::picture {

enum class Orientation {
    AsItIs,
    QuarterRight,
    Half,
    QuarterLeft,
    LeftRight,
    TopBottom,
    Diagonal,       ///< Rows become columns.
    OtherDiagonal,  ///< Mirrored over the diagonal from bottom left to top right.
};

inline constexpr std::array<Orientation, 8> kOrientations = {
    Orientation::AsItIs,   Orientation::LeftRight,     Orientation::TopBottom,
    Orientation::Half,     Orientation::QuarterRight,  Orientation::QuarterLeft,
    Orientation::Diagonal, Orientation::OtherDiagonal,
};

inline core::Grid oriented(const core::Grid& grid, Orientation orientation) {
    switch (orientation) {
        case Orientation::QuarterRight:
            return turned(grid, Turn::Quarter);
        case Orientation::Half:
            return turned(grid, Turn::Half);
        case Orientation::QuarterLeft:
            return turned(grid, Turn::ThreeQuarters);
        case Orientation::LeftRight:
            return mirrored(grid, Mirror::LeftRight);
        case Orientation::TopBottom:
            return mirrored(grid, Mirror::TopBottom);
        case Orientation::Diagonal:
            return mirrored(turned(grid, Turn::Quarter), Mirror::LeftRight);
        case Orientation::OtherDiagonal:
            return mirrored(turned(grid, Turn::Quarter), Mirror::TopBottom);
        case Orientation::AsItIs:
            break;
    }
    return grid;
}

}  // namespace pantile::picture
