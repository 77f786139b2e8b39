#pragma once

// Stroke scripts, encoding 2: the strokes of a plan as bits. Authority: docs/load-format.md
// section 3.

#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

#include "core/canvas.h"
#include "core/geometry.h"
#include "core/result.h"
#include "drawing/stroke.h"

namespace pantile::board {

/// What a script may name: cells of the grid, colours of the palette, and what the pen can do.
struct ScriptBounds {
    core::Size grid;
    int colours = 0;
    core::PenModel pen = core::PenModel::WholeCells;
    bool turns = true;
    int jumpCells = 0;  ///< The longest jump; 0 if the pen cannot jump.
};

/// Errors: InvalidInput naming the stroke that is empty, leaves the bounds, stands still between
/// two points of its path, goes straight on there, or does what the pen cannot; TooLarge if the
/// script would be longer than the format allows.
core::Result<std::vector<std::uint8_t>> encodeScript(std::span<const drawing::Stroke> strokes,
                                                     const ScriptBounds& bounds);

/// How many bits `strokes` take that are all of one colour, between others.
/// Shape: at least one stroke. Errors: as encodeScript.
core::Result<std::size_t> visitBits(std::span<const drawing::Stroke> strokes,
                                    const ScriptBounds& bounds);

/// The same strokes again, turns and all. Errors: Corrupt naming the byte that breaks a rule.
core::Result<std::vector<drawing::Stroke>> decodeScript(std::span<const std::uint8_t> script,
                                                        const ScriptBounds& bounds);

}  // namespace pantile::board
