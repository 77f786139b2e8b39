#include "picture/enlarge.h"

#include "core/range_check.h"

namespace pantile::picture {

core::Result<core::Pixels> enlarged(const core::Grid& grid, const core::Palette& palette,
                                    int factor) {
    PANTILE_RETURN_IF_ERROR(
        core::checkRange("the factor of enlargement", factor, 1, kMaxEnlargement));
    PANTILE_RETURN_IF_ERROR(
        core::checkRange("the grid's largest index", grid.largestIndex(), 0, palette.size() - 1));
    core::Pixels pixels{{grid.width() * factor, grid.height() * factor}, {}};
    pixels.pixels.reserve(grid.cellCount() * static_cast<std::size_t>(factor) *
                          static_cast<std::size_t>(factor));
    for (int y = 0; y < pixels.size.height; ++y) {
        for (int x = 0; x < pixels.size.width; ++x) {
            const core::PaletteIndex index = grid.at(x / factor, y / factor);
            const core::Rgb8 colour = palette[index];
            const bool painted = palette.transparent() != index;
            pixels.pixels.push_back(
                {colour.r, colour.g, colour.b, painted ? std::uint8_t{255} : std::uint8_t{0}});
        }
    }
    return pixels;
}

}  // namespace pantile::picture
