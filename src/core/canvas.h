#pragma once

// Canvas: what a toolkit accepts, and where on its screen the grid and the palette bar lie.

#include <optional>
#include <string>

#include "core/geometry.h"
#include "core/palette.h"
#include "core/pen_rules.h"
#include "core/result.h"

namespace pantile::core {

/// How the toolkit paints while the pen moves. Stored in libraries and loads: never renumber.
enum class PenModel : unsigned char {
    WholeCells = 0,  ///< Steps of at most one cell along rows and columns paint every cell passed.
    Diagonals = 1,   ///< As WholeCells, and a step to a diagonal neighbour paints just that.
    Lines = 2,    ///< A straight move along a row or column of any length paints every cell passed.
    Sampled = 3,  ///< Only the cells at which a report lands are painted.
};

/// Units: pointer counts on the toolkit's screen, from its top left corner.
struct CanvasGeometry {
    Point gridCentre;      ///< Centre of the cell at column 0, row 0.
    int cellPitch = 8;     ///< From one cell's centre to its neighbour's, in both directions.
    Point swatchCentre;    ///< Centre of the palette bar's swatch for index 0.
    int swatchPitch = 16;  ///< From one swatch's centre to the next, down and to the next column.
    int swatchesPerColumn = 16;
    /// Where a click fills the whole canvas with the picked colour, if the toolkit has such a
    /// button.
    std::optional<Point> fillButton = {};

    bool operator==(const CanvasGeometry&) const = default;

    Point cellCentre(Point cell) const {
        return {gridCentre.x + cell.x * cellPitch, gridCentre.y + cell.y * cellPitch};
    }

    Point swatch(PaletteIndex index) const {
        return {swatchCentre.x + index / swatchesPerColumn * swatchPitch,
                swatchCentre.y + index % swatchesPerColumn * swatchPitch};
    }

    /// The usual arrangement: the grid in the screen's corner, the palette bar to the right of it.
    static CanvasGeometry beside(Size grid);
};

/// Shape: `size` is what the toolkit's grid holds; smaller textures lie in its top left corner.
struct Canvas {
    std::string name;
    Size size;
    std::optional<Palette> palette;  ///< The toolkit's fixed colours, if it has such.
    int freeColours = 16;            ///< Otherwise: how many colours the maker may set.
    PenModel penModel = PenModel::WholeCells;
    PenRules rules;
    CanvasGeometry geometry;

    bool operator==(const Canvas&) const = default;

    /// How many colours a texture for it may have.
    int colourLimit() const { return palette ? palette->size() : freeColours; }

    /// Whether the pen can go on at another cell without painting what lies between. Jumps turn.
    bool penJumps() const { return penModel == PenModel::Sampled && rules.turns; }
};

inline constexpr int kMaxPitch = 127;     ///< Of cells and of swatches, in counts.
inline constexpr int kMaxCounts = 32767;  ///< How far right or down a place may lie.

/// Errors: InvalidInput naming the field: pitches 1..kMaxPitch, 1..256 swatches in a column, places
/// at 0..kMaxCounts.
Result<void> checkGeometry(const CanvasGeometry& geometry);

/// Errors: InvalidInput naming the field: size as a grid's, 2..256 free colours, checkGeometry; or
/// if the fill button lies on the grid or on a swatch.
Result<void> checkUnnamedCanvas(const Canvas& canvas);

/// Errors: as checkUnnamedCanvas; the name by checkName.
Result<void> checkCanvas(const Canvas& canvas);

/// Names of canvases, boards, palettes, shelves and loads. Errors: InvalidInput if empty, longer
/// than 60 characters, with blanks at an end, or with characters that checkText refuses.
Result<void> checkName(std::string_view what, std::string_view name);

}  // namespace pantile::core
