#pragma once

// The operations that touch up a texture, as values: what the command line and the window ask for.
// What each does is said in docs/touch-up.md. A new one is a struct here, listed in TouchOperation,
// and an apply() in touch_operations.cpp.

#include <functional>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "core/result.h"
#include "core/texture.h"
#include "picture/brush.h"
#include "picture/cell_noise.h"
#include "picture/gradient.h"
#include "picture/neighbours.h"
#include "picture/rectangle.h"
#include "picture/resize.h"
#include "picture/seam_healing.h"
#include "picture/strays.h"
#include "picture/symmetry.h"
#include "picture/transform.h"

namespace pantile::tasks {

/// How the operations that paint do so.
struct Pen {
    core::PaletteIndex colour = 0;
    picture::Brush brush;  ///< For lines, curves and outlines of shapes.
    picture::Symmetry symmetry = picture::Symmetry::None;
    std::optional<core::PaletteIndex> only;  ///< Paints over cells of this index alone.
};

struct DrawLine {
    std::vector<core::Point> corners;  ///< 1..kMaxCorners; one is a dot.
    Pen pen;
};

inline constexpr std::size_t kMaxCorners = 256;

struct DrawCurve {
    core::Point from;
    core::Point through;
    core::Point to;
    Pen pen;
};

enum class Interior { Empty, Filled };

struct DrawRectangle {
    core::Point corner;
    core::Point opposite;
    Interior interior = Interior::Empty;
    Pen pen;
};

/// In the box that a DrawRectangle would draw.
struct DrawEllipse {
    core::Point corner;
    core::Point opposite;
    Interior interior = Interior::Empty;
    Pen pen;
};

struct DrawOutline {
    core::PaletteIndex background = 0;
    picture::Neighbours neighbours = picture::Neighbours::Four;
    Pen pen;
};

struct Fill {
    core::Point at;
    picture::Neighbours neighbours = picture::Neighbours::Four;
    Pen pen;
};

/// All cells of the colour that stands at a place.
struct FillAlike {
    core::Point at;
    Pen pen;
};

struct DrawGradient {
    picture::Gradient gradient;
    std::optional<core::PaletteIndex> only;  ///< As Pen's.
};

struct ReplaceColour {
    core::PaletteIndex from = 0;
    core::PaletteIndex to = 0;
};

struct SwapColours {
    core::PaletteIndex one = 0;
    core::PaletteIndex other = 0;
};

struct MirrorCells {
    picture::Mirror mirror = picture::Mirror::LeftRight;
};

struct TurnCells {
    picture::Turn turn = picture::Turn::Quarter;
};

struct ShiftCells {
    core::Point by;
};

struct Crop {
    core::Point corner;
    core::Point opposite;
};

struct Extend {
    picture::Margins margins;
    core::PaletteIndex colour = 0;
};

struct Enlarge {
    int factor = 1;
};

struct Shrink {
    int factor = 1;
};

struct AddNoise {
    picture::NoiseOptions options;
};

struct HealSeams {
    picture::HealOptions options;
};

struct RemoveStrays {
    picture::StrayOptions options;
};

struct Simplify {
    int level = 0;  ///< As picture::simplify.
};

/// Gives the texture another palette; later steps count its colours.
struct Recolour {
    std::string palette;  ///< A name.
};

/// Leaves colours out of the palette; later steps count those that stay.
struct ReduceColours {
    int count = core::kMaxPaletteColours;
};

using TouchOperation =
    std::variant<DrawLine, DrawCurve, DrawRectangle, DrawEllipse, DrawOutline, Fill, FillAlike,
                 DrawGradient, ReplaceColour, SwapColours, MirrorCells, TurnCells, ShiftCells, Crop,
                 Extend, Enlarge, Shrink, AddNoise, HealSeams, RemoveStrays, Simplify, Recolour,
                 ReduceColours>;

/// Gives the palette of a name. Errors: NotFound.
using PaletteLookup = std::function<core::Result<core::Palette>(const std::string& name)>;

/// `texture` after the operation, its words as they were.
/// Errors: InvalidInput for a colour outside the palette, a place or size out of range, and what
/// the functions of picture/ refuse; those of `lookUp`.
core::Result<core::Texture> touched(const core::Texture& texture, const TouchOperation& operation,
                                    const PaletteLookup& lookUp);

}  // namespace pantile::tasks
