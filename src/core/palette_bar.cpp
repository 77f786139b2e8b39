#include "core/palette_bar.h"

#include <string>

namespace pantile::core {
namespace {

/// Counts on one axis: from `first`, `length` of them.
struct CountSpan {
    int first;
    int length;
};

/// What `squares` squares of `pitch` take up, the first of them centred at `centre`.
CountSpan spanOf(int centre, int pitch, int squares) {
    return {centre - pitch / 2, pitch * squares};
}

bool meet(CountSpan a, CountSpan b) {
    return a.first < b.first + b.length && b.first < a.first + a.length;
}

bool liesOverGrid(PaletteIndex colour, const Canvas& canvas) {
    const CanvasGeometry& g = canvas.geometry;
    const Point swatch = g.swatch(colour);
    return meet(spanOf(g.gridCentre.x, g.cellPitch, canvas.size.width),
                spanOf(swatch.x, g.swatchPitch, 1)) &&
           meet(spanOf(g.gridCentre.y, g.cellPitch, canvas.size.height),
                spanOf(swatch.y, g.swatchPitch, 1));
}

}  // namespace

Point usualBarPlace(const CanvasGeometry& g, Size grid) {
    constexpr int kGapCounts = 24;
    const CountSpan across = spanOf(g.gridCentre.x, g.cellPitch, grid.width);
    const CountSpan down = spanOf(g.gridCentre.y, g.cellPitch, grid.height);
    return {across.first + across.length + kGapCounts + g.swatchPitch / 2,
            down.first + g.swatchPitch / 2};
}

Result<void> checkSwatch(PaletteIndex colour, const Canvas& canvas) {
    if (!liesOverGrid(colour, canvas)) return {};
    return Error{ErrorKind::InvalidInput,
                 "the swatch of colour " + std::to_string(colour) + " lies over the canvas's grid",
                 "say where the palette bar lies, with --bar-at X,Y of canvas add or canvas set"};
}

Result<void> checkBar(const Canvas& canvas) {
    PANTILE_RETURN_IF_ERROR(checkUnnamedCanvas(canvas));
    for (int colour = 0; colour < canvas.colourLimit(); ++colour)
        PANTILE_RETURN_IF_ERROR(checkSwatch(static_cast<PaletteIndex>(colour), canvas));
    return {};
}

void keepUsualBarClear(Canvas& canvas, const CanvasGeometry& before, Size sizeBefore) {
    if (before.swatchCentre != usualBarPlace(before, sizeBefore) || checkBar(canvas)) return;
    canvas.geometry.swatchCentre = usualBarPlace(canvas.geometry, canvas.size);
}

}  // namespace pantile::core
