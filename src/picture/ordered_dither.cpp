#include <algorithm>
#include <array>
#include <cassert>
#include <cstddef>
#include <numeric>

#include "picture/dither.h"
#include "picture/error_diffusion.h"
#include "picture/palette_light.h"

namespace pantile::picture {
namespace {

// Mixtures as fine as the usual masks. Smaller masks take every n-th of them, for the few entries
// that they could mix themselves would be lighter than the colour on average: the nearest entry in
// OKLab is the light one from an eighth of the light on.
constexpr int kEntries = 64;

// Places from light to dark in the palette.
std::vector<int> lightnessOrder(const core::Palette& palette) {
    std::vector<core::PaletteIndex> byLightness(static_cast<std::size_t>(palette.size()));
    std::iota(byLightness.begin(), byLightness.end(), core::PaletteIndex{0});
    std::stable_sort(byLightness.begin(), byLightness.end(),
                     [&palette](core::PaletteIndex p, core::PaletteIndex q) {
                         return core::toOkLab(palette[p]).l > core::toOkLab(palette[q]).l;
                     });
    std::vector<int> order(byLightness.size());
    for (std::size_t place = 0; place < byLightness.size(); ++place)
        order[byLightness[place]] = static_cast<int>(place);
    return order;
}

// The entries that mix a colour: each makes up for what those before it left.
class Mixture {
public:
    Mixture(const core::Palette& palette, double strength)
        : m_light(palette), m_order(lightnessOrder(palette)), m_strength(strength) {}

    core::PaletteIndex entry(const core::LinearRgb& colour, int fromLightest) {
        core::LinearRgb wanted = colour;
        for (core::PaletteIndex& entry : m_entries) {
            entry = m_light.nearest(wanted);
            const core::LinearRgb error = m_light.error(wanted, entry);
            wanted = colour;
            addShare(wanted, error, m_strength);
        }
        const auto at = m_entries.begin() + fromLightest;
        std::nth_element(
            m_entries.begin(), at, m_entries.end(),
            [this](core::PaletteIndex p, core::PaletteIndex q) { return m_order[p] < m_order[q]; });
        return *at;
    }

private:
    PaletteLight m_light;
    std::vector<int> m_order;
    double m_strength;
    std::array<core::PaletteIndex, kEntries> m_entries{};
};

}  // namespace

std::vector<core::PaletteIndex> orderedDither(const CellColours& colours,
                                              const core::Palette& palette,
                                              const ThresholdMask& mask, double strength) {
    Mixture mixture(palette, strength);
    std::vector<core::PaletteIndex> cells;
    cells.reserve(colours.cells.size());
    for (int y = 0; y < colours.size.height; ++y) {
        for (int x = 0; x < colours.size.width; ++x) {
            const auto& colour = colours.cells[cells.size()];
            assert(colour || palette.transparent());
            const int threshold = (2 * mask.rankAt(x, y) + 1) * kEntries / (2 * mask.count());
            cells.push_back(colour ? mixture.entry(*colour, threshold) : *palette.transparent());
        }
    }
    return cells;
}

}  // namespace pantile::picture
