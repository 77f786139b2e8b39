#include "picture/palette_light.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>

namespace pantile::picture {
namespace {

// Lightness that is off in one cell is soon made up for by the next, for every palette has light
// and dark; a wrong hue needs its opposite, which few palettes have near. Measured, not derived.
constexpr double kChromaWeight = 2;

// A colour with gathered error may be brighter than a screen's; below black OKLab means little.
constexpr double kBrightest = 2;

core::LinearRgb clamped(const core::LinearRgb& colour, double least, double most) {
    return {std::clamp(colour.r, least, most), std::clamp(colour.g, least, most),
            std::clamp(colour.b, least, most)};
}

double largestDifference(const core::LinearRgb& p, const core::LinearRgb& q) {
    return std::max({std::abs(p.r - q.r), std::abs(p.g - q.g), std::abs(p.b - q.b)});
}

std::vector<core::LinearRgb> paintableColours(const core::Palette& palette) {
    std::vector<core::LinearRgb> colours;
    for (int i = 0; i < palette.size(); ++i) {
        const auto index = static_cast<core::PaletteIndex>(i);
        if (palette.transparent() != index) colours.push_back(core::toLinear(palette[index]));
    }
    return colours;
}

// The longest step on a walk along the palette that always goes on to the colour nearest to those
// already met (the longest edge of the minimum spanning tree; Prim 1957). A cell whose colour the
// palette can mix is hardly further than that from what it shows. A larger error comes from colours
// outside the palette's range; handed on without a bound it would smear over everything below.
double widestGap(std::vector<core::LinearRgb> colours) {
    core::LinearRgb latest = colours.back();
    colours.pop_back();
    std::vector<double> distances(colours.size(), std::numeric_limits<double>::infinity());
    double widest = 0;
    while (!colours.empty()) {
        for (std::size_t i = 0; i < colours.size(); ++i)
            distances[i] = std::min(distances[i], largestDifference(colours[i], latest));
        const auto next = std::min_element(distances.begin(), distances.end());
        widest = std::max(widest, *next);
        const auto at = static_cast<std::size_t>(next - distances.begin());
        latest = colours[at];
        colours[at] = colours.back();
        distances[at] = distances.back();
        colours.pop_back();
        distances.pop_back();
    }
    return widest;
}

}  // namespace

PaletteLight::PaletteLight(const core::Palette& palette)
    : m_nearest(palette, kChromaWeight), m_widestGap(widestGap(paintableColours(palette))) {
    m_light.reserve(palette.colours().size());
    for (const core::Rgb8 colour : palette.colours()) m_light.push_back(core::toLinear(colour));
}

core::PaletteIndex PaletteLight::nearest(const core::LinearRgb& wanted) const {
    return m_nearest.find(core::toOkLab(clamped(wanted, 0, kBrightest)));
}

core::LinearRgb PaletteLight::error(const core::LinearRgb& wanted, core::PaletteIndex shown) const {
    const core::LinearRgb& light = m_light[shown];
    return clamped({wanted.r - light.r, wanted.g - light.g, wanted.b - light.b}, -m_widestGap,
                   m_widestGap);
}

}  // namespace pantile::picture
