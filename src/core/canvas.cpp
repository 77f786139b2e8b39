#include "core/canvas.h"

#include <string>

#include "core/palette_bar.h"
#include "core/range_check.h"
#include "core/text.h"

namespace pantile::core {
namespace {

constexpr std::size_t kMaxNameCharacters = 60;

/// Which of the squares of side `pitch`, the first centred at `centre`, holds `place`; negative
/// before the first.
int squareAt(int place, int centre, int pitch) {
    const int fromEdge = place - (centre - pitch / 2);
    return fromEdge < 0 ? -1 : fromEdge / pitch;
}

bool liesOnGrid(Point place, const Canvas& canvas) {
    const CanvasGeometry& g = canvas.geometry;
    const int x = squareAt(place.x, g.gridCentre.x, g.cellPitch);
    const int y = squareAt(place.y, g.gridCentre.y, g.cellPitch);
    return x >= 0 && y >= 0 && x < canvas.size.width && y < canvas.size.height;
}

bool liesOnSwatch(Point place, const Canvas& canvas) {
    const CanvasGeometry& g = canvas.geometry;
    const int column = squareAt(place.x, g.swatchCentre.x, g.swatchPitch);
    const int row = squareAt(place.y, g.swatchCentre.y, g.swatchPitch);
    return column >= 0 && row >= 0 && row < g.swatchesPerColumn &&
           column * g.swatchesPerColumn + row < canvas.colourLimit();
}

Result<void> checkFillButton(const Canvas& canvas) {
    if (!canvas.geometry.fillButton) return {};
    const Point place = *canvas.geometry.fillButton;
    const bool onGrid = liesOnGrid(place, canvas);
    if (!onGrid && !liesOnSwatch(place, canvas)) return {};
    return Error{ErrorKind::InvalidInput,
                 "the fill button at " + std::to_string(place.x) + "," + std::to_string(place.y) +
                     " lies on " + (onGrid ? "the grid" : "a swatch of the palette bar"),
                 "correct its place, or those of the grid and the palette bar"};
}

}  // namespace

CanvasGeometry CanvasGeometry::beside(Size grid) {
    CanvasGeometry g;
    g.gridCentre = {g.cellPitch / 2, g.cellPitch / 2};
    g.swatchCentre = usualBarPlace(g, grid);
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
    PANTILE_RETURN_IF_ERROR(checkRange("the cell pitch", g.cellPitch, 1, kMaxPitch));
    PANTILE_RETURN_IF_ERROR(checkRange("the swatch pitch", g.swatchPitch, 1, kMaxPitch));
    PANTILE_RETURN_IF_ERROR(checkRange("the swatches in a column", g.swatchesPerColumn, 1, 256));
    PANTILE_RETURN_IF_ERROR(checkRange("the grid's left", g.gridCentre.x, 0, kMaxCounts));
    PANTILE_RETURN_IF_ERROR(checkRange("the grid's top", g.gridCentre.y, 0, kMaxCounts));
    PANTILE_RETURN_IF_ERROR(checkRange("the palette bar's left", g.swatchCentre.x, 0, kMaxCounts));
    PANTILE_RETURN_IF_ERROR(checkRange("the palette bar's top", g.swatchCentre.y, 0, kMaxCounts));
    if (!g.fillButton) return {};
    PANTILE_RETURN_IF_ERROR(checkRange("the fill button's left", g.fillButton->x, 0, kMaxCounts));
    return checkRange("the fill button's top", g.fillButton->y, 0, kMaxCounts);
}

Result<void> checkUnnamedCanvas(const Canvas& canvas) {
    PANTILE_RETURN_IF_ERROR(checkGridSize(canvas.size.width, canvas.size.height));
    if (!canvas.palette) {
        PANTILE_RETURN_IF_ERROR(checkRange("the number of free colours", canvas.freeColours,
                                           kMinPaletteColours, kMaxPaletteColours));
    }
    PANTILE_RETURN_IF_ERROR(checkGeometry(canvas.geometry));
    return checkFillButton(canvas);
}

Result<void> checkCanvas(const Canvas& canvas) {
    PANTILE_RETURN_IF_ERROR(checkName("canvas name", canvas.name));
    return checkUnnamedCanvas(canvas);
}

}  // namespace pantile::core
