#include "draw/seams.h"

#include <algorithm>

#include "core/colour_difference.h"

namespace pantile::sample_art {

SeamMeasure measureSeam(const Sheet& sheet, SeamAxis axis) {
    const core::Palette palette = tidewrackSpritePalette();
    std::vector<core::Lab> inks;
    for (const core::Rgb8 colour : palette.colours()) inks.push_back(core::toLab(colour));
    const core::Grid grid = sheet.toGrid();
    const int side = sheet.side();
    const auto inkAt = [&](int along, int lane) {
        const int lap = wrapped(along, side);
        return inks[axis == SeamAxis::Across ? grid.at(lap, lane) : grid.at(lane, lap)];
    };
    SeamMeasure measure;
    for (int along = 0; along < side; ++along) {
        double sum = 0.0;
        for (int lane = 0; lane < side; ++lane)
            sum += core::ciede2000(inkAt(along, lane), inkAt(along + 1, lane));
        const double mean = sum / side;
        if (along == side - 1) {
            measure.overEdge = mean;
        } else {
            measure.largestInside = std::max(measure.largestInside, mean);
        }
    }
    return measure;
}

}  // namespace pantile::sample_art
