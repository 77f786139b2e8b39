#pragma once

// VisitWriter: all strokes between two picks as bits, in the shorter of two forms. Authority:
// docs/load-format.md section 3.

#include <optional>
#include <span>

#include "board/script_bits.h"
#include "board/stroke_script.h"
#include "core/geometry.h"
#include "drawing/stroke.h"

namespace pantile::board {

/// Shape: as encodeScript checks; `strokes` is not empty and of one colour, and the pen stands at
/// `pen`. Nothing if there are more strokes than a visit can have.
std::optional<ScriptBitWriter> writeVisit(std::span<const drawing::Stroke> strokes,
                                          const ScriptBounds& bounds, core::Point pen);

/// The direction of a straight piece, in eighths; nothing if it is none.
std::optional<int> directionOf(core::Point from, core::Point to);

}  // namespace pantile::board
