#include "catalogue/painted_colours.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/colour_spaces.h"

namespace pantile::catalogue {
namespace {

constexpr int kBits = 8;

// Of OKLab, a circle's place from 0 to 4 without an angle: whole numbers lie on the axes.
double hueAround(const core::OkLab& colour) {
    const double sum = std::abs(colour.a) + std::abs(colour.b);
    const double along = colour.b / sum;
    if (colour.a < 0) return 2 - along;
    return colour.b < 0 ? 4 + along : along;
}

std::int64_t toneOf(core::Rgb8 colour) {
    constexpr double kGreyChroma = 0.03;  // Less is seen as no colour.
    constexpr int kLights = 1000;
    constexpr double kHuesPerQuarter = 100;
    const core::OkLab lab = core::toOkLab(core::toLinear(colour));
    const auto light = static_cast<std::int64_t>(std::clamp(lab.l, 0.0, 1.0) * (kLights - 1));
    const bool isGrey = lab.a * lab.a + lab.b * lab.b < kGreyChroma * kGreyChroma;
    const auto hue = isGrey ? 0 : 1 + static_cast<std::int64_t>(hueAround(lab) * kHuesPerQuarter);
    return 1 + hue * kLights + light;
}

}  // namespace

PaintedColours paintedColours(const core::Grid& grid, const core::Palette& palette) {
    std::array<int, core::kMaxPaletteColours> cells{};
    for (const core::PaletteIndex index : grid.cells()) ++cells[index];
    if (palette.transparent()) cells[*palette.transparent()] = 0;
    PaintedColours painted;
    painted.used.resize(core::kMaxPaletteColours / kBits);
    for (int i = 0; i < palette.size(); ++i) {
        const auto entry = static_cast<std::size_t>(i);
        if (cells[entry] > 0) {
            painted.used[entry / kBits] |= static_cast<std::uint8_t>(1U << (entry % kBits));
        }
    }
    while (!painted.used.empty() && painted.used.back() == 0) painted.used.pop_back();
    const auto most = std::max_element(cells.begin(), cells.end()) - cells.begin();
    if (cells[static_cast<std::size_t>(most)] > 0) {
        painted.tone = toneOf(palette[static_cast<core::PaletteIndex>(most)]);
    }
    return painted;
}

}  // namespace pantile::catalogue
