#include "core/canvas.h"

#include "core/range_check.h"
#include "core/text.h"

namespace pantile::core {
namespace {

constexpr int kMaxCounts = 32767;
constexpr std::size_t kMaxNameCharacters = 60;

}  // namespace

CanvasGeometry CanvasGeometry::beside(Size grid) {
    constexpr int kGapCounts = 24;
    CanvasGeometry g;
    g.gridCentre = {g.cellPitch / 2, g.cellPitch / 2};
    g.swatchCentre = {grid.width * g.cellPitch + kGapCounts + g.swatchPitch / 2, g.swatchPitch / 2};
    return g;
}

Result<void> checkName(std::string_view what, std::string_view name) {
    PANTILE_RETURN_IF_ERROR(checkText(name, {what, kMaxNameCharacters}));
    if (!name.empty() && name.front() != ' ' && name.back() != ' ') return {};
    return Error{ErrorKind::InvalidInput,
                 "the " + std::string(what) + " is empty or has blanks at an end",
                 "give it at least one character and no blanks around it"};
}

Result<void> checkGeometry(const CanvasGeometry& g) {
    PANTILE_RETURN_IF_ERROR(checkRange("the cell pitch", g.cellPitch, 1, 127));
    PANTILE_RETURN_IF_ERROR(checkRange("the swatch pitch", g.swatchPitch, 1, 127));
    PANTILE_RETURN_IF_ERROR(checkRange("the swatches in a column", g.swatchesPerColumn, 1, 256));
    PANTILE_RETURN_IF_ERROR(checkRange("the grid's left", g.gridCentre.x, 0, kMaxCounts));
    PANTILE_RETURN_IF_ERROR(checkRange("the grid's top", g.gridCentre.y, 0, kMaxCounts));
    PANTILE_RETURN_IF_ERROR(checkRange("the palette bar's left", g.swatchCentre.x, 0, kMaxCounts));
    return checkRange("the palette bar's top", g.swatchCentre.y, 0, kMaxCounts);
}

Result<void> checkUnnamedCanvas(const Canvas& canvas) {
    PANTILE_RETURN_IF_ERROR(checkGridSize(canvas.size.width, canvas.size.height));
    if (!canvas.palette) {
        PANTILE_RETURN_IF_ERROR(checkRange("the number of free colours", canvas.freeColours,
                                           kMinPaletteColours, kMaxPaletteColours));
    }
    return checkGeometry(canvas.geometry);
}

Result<void> checkCanvas(const Canvas& canvas) {
    PANTILE_RETURN_IF_ERROR(checkName("canvas name", canvas.name));
    return checkUnnamedCanvas(canvas);
}

}  // namespace pantile::core
