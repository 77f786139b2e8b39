#pragma once

// The tools that work on places of a grid: what a way of the pointer over its cells becomes as
// operations of a touch-up.

#include <optional>
#include <span>
#include <vector>

#include <QString>

#include "core/result.h"
#include "core/texture.h"
#include "tasks/touch_operations.h"

namespace pantile::desktop {

enum class Tool { Pen, Line, Rectangle, Ellipse, Curve, Fill, FillAlike, Gradient, Crop };

struct ToolSettings {
    Tool tool = Tool::Pen;
    core::PaletteIndex colour = 0;
    core::PaletteIndex other = 1;  ///< Where a gradient ends.
    picture::Brush brush;
    picture::Symmetry symmetry = picture::Symmetry::None;
    tasks::Interior interior = tasks::Interior::Empty;
    picture::Neighbours neighbours = picture::Neighbours::Four;
    bool wraps = false;  ///< What leaves at one edge comes in at the other.
};

/// How many places a tool takes before it is done: each but the pen's is set by a press or its
/// release. The pen takes as many as there are.
int placesOf(Tool tool);

/// A rectangle or an ellipse.
inline bool isShape(Tool tool) {
    return tool == Tool::Rectangle || tool == Tool::Ellipse;
}

/// What the tool does, for undo and the row of tools.
QString toolName(Tool tool);

/// The cell of the texture that a place stands for where it repeats all around.
core::Point wrapped(core::Point place, core::Size size);

/// `texture` after the tool went over `places`, which may lie outside of the grid.
/// Errors: as tasks::touched.
core::Result<core::Texture> afterTool(const core::Texture& texture, const ToolSettings& settings,
                                      std::span<const core::Point> places);

}  // namespace pantile::desktop
