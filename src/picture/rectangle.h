#pragma once

#include "picture/cell_set.h"
#include "picture/path.h"

namespace pantile::picture {

/// Shape: columns left..right and rows top..bottom, all four included.
struct CellBox {
    int left = 0, top = 0;
    int right = 0, bottom = 0;

    int width() const { return right - left + 1; }

    int height() const { return bottom - top + 1; }

    bool operator==(const CellBox&) const = default;
};

/// The box of which two cells are opposite corners.
CellBox boxBetween(core::Point corner, core::Point opposite);

/// The box's border, once around, each cell once.
Path rectanglePath(const CellBox& box);

CellSet filledRectangle(core::Size grid, const CellBox& box);

/// The part of `box` that lies on the grid; its right is left of its left, or its bottom above its
/// top, where there is none.
CellBox clipped(const CellBox& box, core::Size grid);

}  // namespace pantile::picture
