#pragma once

// Stroke and Plan: what a board draws, in order. Authority: docs/drawing.md.

#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

#include "core/geometry.h"
#include "core/grid.h"

namespace pantile::drawing {

/// One press, move and release of the pen in one colour.
/// Shape: `path` holds the cells at which the pen goes down, turns and goes up: at least one;
/// between two of them the pen moves straight, along a row or a column (or as the canvas's pen
/// model allows).
struct Stroke {
    core::PaletteIndex colour = 0;
    std::vector<core::Point> path;
    /// By place in the path, whether the pen jumps there: in one report, painting nothing on the
    /// way. Empty if it never does; only the Sampled pen can.
    std::vector<bool> jumps = {};

    bool jumpsTo(std::size_t place) const { return place < jumps.size() && jumps[place]; }

    bool operator==(const Stroke&) const = default;
};

/// Shape: the fill, if there is one, comes first; then the strokes in drawing order. A colour is
/// picked before the fill, before the first stroke, and whenever a stroke's colour differs from the
/// last one's.
struct Plan {
    std::vector<Stroke> strokes;
    int picks = 0;                  ///< Clicks on the palette bar.
    int lifts = 0;                  ///< Times the pen goes up on the grid.
    std::int64_t milliseconds = 0;  ///< From the pen's start at cell (0, 0) to the last release.
    std::optional<core::PaletteIndex> fill = {};  ///< What the whole canvas is filled with first.

    bool operator==(const Plan&) const = default;
};

}  // namespace pantile::drawing
