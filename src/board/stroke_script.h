#pragma once

// Stroke scripts, encoding 1: the strokes of a plan as bytes. Authority: docs/load-format.md
// section 3.

#include <cstdint>
#include <span>
#include <vector>

#include "core/geometry.h"
#include "core/result.h"
#include "drawing/stroke.h"

namespace pantile::board {

/// What a script may name: cells of the grid, colours of the palette, and jumps of the pen.
struct ScriptBounds {
    core::Size grid;
    int colours = 0;
    int jumpCells = 0;  ///< The longest; 0 if the pen cannot jump.
};

/// Errors: InvalidInput naming the stroke that is empty, leaves the bounds or stands still between
/// two points of its path; TooLarge if the script would be longer than the format allows.
core::Result<std::vector<std::uint8_t>> encodeScript(std::span<const drawing::Stroke> strokes,
                                                     const ScriptBounds& bounds);

/// The same strokes again, turns and all. Errors: Corrupt naming the byte that breaks a rule.
core::Result<std::vector<drawing::Stroke>> decodeScript(std::span<const std::uint8_t> script,
                                                        const ScriptBounds& bounds);

}  // namespace pantile::board
