#include "tasks/text_picture.h"

#include <string_view>

namespace pantile::tasks {
namespace {

constexpr std::string_view kDigits =
    "0123456789abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ";

std::string cellText(core::PaletteIndex index, bool unpainted, bool wide) {
    if (!wide) return {unpainted ? '.' : kDigits[index]};
    if (unpainted) return ".. ";
    return {kDigits[index >> 4U], kDigits[index & 15U], ' '};
}

}  // namespace

std::string textPicture(const core::Grid& grid, const core::Palette& palette) {
    const bool wide = grid.largestIndex() >= kDigits.size();
    std::string picture;
    for (int y = 0; y < grid.height(); ++y) {
        for (int x = 0; x < grid.width(); ++x) {
            const core::PaletteIndex index = grid.at(x, y);
            picture += cellText(index, palette.transparent() == index, wide);
        }
        if (wide) picture.pop_back();
        picture += '\n';
    }
    return picture;
}

}  // namespace pantile::tasks
