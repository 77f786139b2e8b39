#pragma once

// Places and sizes in cells or pixels; x runs right, y runs down.

#include <compare>

namespace pantile::core {

struct Point {
    int x = 0;
    int y = 0;
    auto operator<=>(const Point&) const = default;
};

struct Size {
    int width = 0;
    int height = 0;
    auto operator<=>(const Size&) const = default;
};

}  // namespace pantile::core
