#include "picture/exact_indexed.h"

#include <utility>
#include <vector>

namespace pantile::picture {
namespace {

constexpr std::uint8_t kOpaque = 255;

std::optional<core::Palette> keptPalette(const std::vector<core::Rgba8>& table) {
    std::vector<core::Rgb8> colours;
    std::optional<core::PaletteIndex> transparent;
    for (std::size_t i = 0; i < table.size(); ++i) {
        colours.push_back(table[i].rgb());
        if (table[i].a == kOpaque) continue;
        if (table[i].a != 0 || transparent) return std::nullopt;
        transparent = static_cast<core::PaletteIndex>(i);
    }
    if (colours.size() == 1) colours.push_back(colours.front());
    auto palette = core::Palette::create(std::move(colours), transparent);
    if (!palette) return std::nullopt;
    return *std::move(palette);
}

}  // namespace

std::optional<Converted> keptIndexed(const core::Picture& picture) {
    if (!picture.indexed) return std::nullopt;
    std::optional<core::Palette> palette = keptPalette(picture.indexed->table);
    if (!palette) return std::nullopt;
    const core::Size size = picture.pixels.size;
    auto grid = core::Grid::create(size.width, size.height, picture.indexed->indices);
    if (!grid || grid->largestIndex() >= palette->size()) return std::nullopt;
    return Converted{*std::move(grid), *std::move(palette)};
}

}  // namespace pantile::picture
