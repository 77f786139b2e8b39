#pragma once

// Part of a picture, pixel by pixel.

#include "core/geometry.h"
#include "core/pixels.h"
#include "core/result.h"

namespace pantile::picture {

/// Units: pixels of the picture; `at` is the top left one that stays.
struct Rectangle {
    core::Point at;
    core::Size size;

    bool operator==(const Rectangle&) const = default;
};

/// Shape: `part.size`; an indexed picture keeps its table, and its indices inside the part.
/// Errors: InvalidInput if the part is empty or reaches outside the picture.
core::Result<core::Picture> cropped(const core::Picture& picture, const Rectangle& part);

}  // namespace pantile::picture
