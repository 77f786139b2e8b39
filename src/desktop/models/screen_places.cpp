#include "desktop/models/screen_places.h"

#include <algorithm>

namespace pantile::desktop {

ScreenPlaces screenPlaces(const core::Canvas& canvas) {
    const core::CanvasGeometry& g = canvas.geometry;
    const auto squares = [](core::Point centre, int pitch, core::Size count) {
        return CountRect{{centre.x - pitch / 2, centre.y - pitch / 2},
                         {count.width * pitch, count.height * pitch}};
    };
    const int colours = canvas.colourLimit();
    const core::Size swatches{(colours + g.swatchesPerColumn - 1) / g.swatchesPerColumn,
                              std::min(colours, g.swatchesPerColumn)};
    ScreenPlaces places;
    places.grid = squares(g.gridCentre, g.cellPitch, canvas.size);
    places.bar = squares(g.swatchCentre, g.swatchPitch, swatches);
    places.start = g.gridCentre;
    places.fill = g.fillButton;
    places.extent = {std::max(places.grid.right(), places.bar.right()),
                     std::max(places.grid.bottom(), places.bar.bottom())};
    if (places.fill) {
        places.extent.width = std::max(places.extent.width, places.fill->x + g.swatchPitch);
        places.extent.height = std::max(places.extent.height, places.fill->y + g.swatchPitch);
    }
    return places;
}

bool barLiesOnGrid(const ScreenPlaces& places) {
    const CountRect& grid = places.grid;
    const CountRect& bar = places.bar;
    return bar.corner.x < grid.right() && grid.corner.x < bar.right() &&
           bar.corner.y < grid.bottom() && grid.corner.y < bar.bottom();
}

}  // namespace pantile::desktop
