#include "cli/terminal_picture.h"

#include <optional>

namespace pantile::cli {
namespace {

using MaybeColour = std::optional<core::Rgb8>;

MaybeColour colourAt(const core::Grid& grid, const core::Palette& palette, int x, int y) {
    if (y >= grid.height()) return std::nullopt;
    const core::PaletteIndex index = grid.at(x, y);
    if (palette.transparent() == index) return std::nullopt;
    return palette[index];
}

std::string setColour(int layer, core::Rgb8 colour) {
    return "\x1b[" + std::to_string(layer) + ";2;" + std::to_string(colour.r) + ";" +
           std::to_string(colour.g) + ";" + std::to_string(colour.b) + "m";
}

// ECMA-48 SGR: 38 sets the foreground, 48 the background, 0 resets.
std::string halfBlocks(MaybeColour upper, MaybeColour lower) {
    if (!upper && !lower) return "\x1b[0m ";
    if (upper && lower) return setColour(38, *upper) + setColour(48, *lower) + "▀";
    return "\x1b[0m" + (upper ? setColour(38, *upper) + "▀" : setColour(38, *lower) + "▄");
}

}  // namespace

std::string terminalPicture(const core::Grid& grid, const core::Palette& palette) {
    std::string picture;
    for (int y = 0; y < grid.height(); y += 2) {
        for (int x = 0; x < grid.width(); ++x) {
            picture += halfBlocks(colourAt(grid, palette, x, y), colourAt(grid, palette, x, y + 1));
        }
        picture += "\x1b[0m\n";
    }
    return picture;
}

}  // namespace pantile::cli
