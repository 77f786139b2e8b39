#include "picture/transparency.h"

#include <cmath>

namespace pantile::picture {

CellColours cutByAlpha(const LinearPicture& picture, std::uint8_t threshold) {
    CellColours colours{picture.size, {}};
    colours.cells.reserve(picture.pixels.size());
    for (const LinearPixel& pixel : picture.pixels) {
        const int alpha = static_cast<int>(std::floor(pixel.alpha * 255 + 0.5));
        if (alpha < threshold)
            colours.cells.emplace_back();
        else
            colours.cells.emplace_back(pixel.colour);
    }
    return colours;
}

CellColours layOn(const LinearPicture& picture, core::Rgb8 background) {
    const core::LinearRgb below = core::toLinear(background);
    CellColours colours{picture.size, {}};
    colours.cells.reserve(picture.pixels.size());
    for (const LinearPixel& pixel : picture.pixels) {
        const auto mixed = [&pixel](double above, double under) {
            return pixel.alpha * above + (1 - pixel.alpha) * under;
        };
        colours.cells.emplace_back(core::LinearRgb{mixed(pixel.colour.r, below.r),
                                                   mixed(pixel.colour.g, below.g),
                                                   mixed(pixel.colour.b, below.b)});
    }
    return colours;
}

}  // namespace pantile::picture
