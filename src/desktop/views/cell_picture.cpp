#include "desktop/views/cell_picture.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "core/colour_spaces.h"
#include "desktop/theme/apply_theme.h"
#include "picture/enlarge.h"
#include "picture/resample.h"

namespace pantile::desktop {

namespace {

constexpr int kHatchDistance = 5;  // Pixels from one line to the next, along a row.

// One pixel for each cell, or for each group of cells that is averaged. Straight alpha.
using Spots = std::vector<core::Rgba8>;

QRgb over(core::Rgba8 spot, QRgb behind) {
    const auto mix = [&](int front, int back) {
        return (front * spot.a + back * (255 - spot.a)) / 255;
    };
    return qRgb(mix(spot.r, qRed(behind)), mix(spot.g, qGreen(behind)), mix(spot.b, qBlue(behind)));
}

struct SpotGrid {
    core::Size size;
    Spots spots;
    int factor = 1;  ///< Pixels a side of each spot.
};

SpotGrid spotsOfCells(const core::Texture& texture, int factor) {
    const core::Grid& grid = texture.grid();
    const core::Palette& palette = texture.palette();
    SpotGrid result{grid.size(), {}, factor};
    result.spots.reserve(grid.cellCount());
    for (const core::PaletteIndex index : grid.cells()) {
        const core::Rgb8 colour = palette[index];
        const bool open = palette.transparent() == index;
        result.spots.push_back(
            {colour.r, colour.g, colour.b, static_cast<std::uint8_t>(open ? 0 : 255)});
    }
    return result;
}

SpotGrid averagedSpots(const core::Texture& texture, int side) {
    const core::Size cells = texture.grid().size();
    const int longest = std::max(cells.width, cells.height);
    const core::Size target{std::max(1, cells.width * side / longest),
                            std::max(1, cells.height * side / longest)};
    const core::Pixels source = *picture::enlarged(texture.grid(), texture.palette(), 1);
    const auto averaged = *picture::resample(
        source, picture::frame(cells, target, picture::Fit::Stretch), picture::Scale::Area);
    SpotGrid result{target, {}, 1};
    for (const picture::LinearPixel& pixel : averaged.pixels) {
        const core::Rgb8 colour = core::toRgb8(pixel.colour);
        const auto alpha = static_cast<std::uint8_t>(std::lround(pixel.alpha * 255));
        result.spots.push_back({colour.r, colour.g, colour.b, alpha});
    }
    return result;
}

SpotGrid spotsFor(const core::Texture& texture, int side) {
    const int longest = std::max(texture.grid().width(), texture.grid().height());
    const int factor = side / longest;
    return factor >= 1 ? spotsOfCells(texture, factor) : averagedSpots(texture, std::max(side, 1));
}

}  // namespace

Hatch hatchOf(const Theme& theme) {
    return {toQColor(theme.hatch).rgb(), toQColor(theme.hatchGround).rgb()};
}

QRgb hatchAt(int x, int y, Hatch hatch) {
    return (x + y) % kHatchDistance == 0 ? hatch.line : hatch.ground;
}

QImage cellPicture(const core::Texture& texture, int side, Repeat repeat, Hatch hatch) {
    const int times = repeat == Repeat::Once ? 1 : 3;
    const SpotGrid spots = spotsFor(texture, side / times);
    const int width = spots.size.width * spots.factor;
    const int height = spots.size.height * spots.factor;
    QImage image(width * times, height * times, QImage::Format_RGB32);
    for (int y = 0; y < image.height(); ++y) {
        auto* const line = reinterpret_cast<QRgb*>(image.scanLine(y));
        const int row = y % height / spots.factor;
        for (int x = 0; x < image.width(); ++x) {
            const int column = x % width / spots.factor;
            const core::Rgba8 spot = spots.spots[static_cast<std::size_t>(row) *
                                                     static_cast<std::size_t>(spots.size.width) +
                                                 static_cast<std::size_t>(column)];
            line[x] = over(spot, hatchAt(x, y, hatch));
        }
    }
    return image;
}

}  // namespace pantile::desktop
