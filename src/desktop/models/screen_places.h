#pragma once

// Where the parts of a canvas lie on the toolkit's screen, for pictures of it; knows no Qt.

#include <optional>

#include "core/canvas.h"

namespace pantile::desktop {

/// Units: counts. Right and bottom edges lie outside.
struct CountRect {
    core::Point corner;
    core::Size size;

    int right() const { return corner.x + size.width; }

    int bottom() const { return corner.y + size.height; }

    bool operator==(const CountRect&) const = default;
};

struct ScreenPlaces {
    CountRect grid;
    CountRect bar;      ///< Around all swatches.
    core::Point start;  ///< Where the pen has to stand at first: the middle of the first cell.
    std::optional<core::Point> fill;
    core::Size extent;  ///< From the screen's top left corner, all parts within.

    bool operator==(const ScreenPlaces&) const = default;
};

/// `canvas` must pass core::checkUnnamedCanvas.
ScreenPlaces screenPlaces(const core::Canvas& canvas);

/// Whether the palette bar lies on the grid, so that a stroke would pick colours.
bool barLiesOnGrid(const ScreenPlaces& places);

}  // namespace pantile::desktop
