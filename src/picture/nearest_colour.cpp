#include "picture/nearest_colour.h"

namespace pantile::picture {

NearestColour::NearestColour(const core::Palette& palette, double chromaWeight)
    : m_chromaWeight(chromaWeight) {
    for (int i = 0; i < palette.size(); ++i) {
        const auto index = static_cast<core::PaletteIndex>(i);
        if (palette.transparent() != index)
            m_entries.push_back({weighted(core::toOkLab(palette[index])), index});
    }
}

core::PaletteIndex NearestColour::find(const core::OkLab& colour) const {
    // A palette has two entries at least, of which one at most is transparent.
    const Entry* nearest = &m_entries.front();
    const core::OkLab wanted = weighted(colour);
    double least = core::squaredDistance(wanted, nearest->colour);
    for (const Entry& entry : m_entries) {
        const double distance = core::squaredDistance(wanted, entry.colour);
        if (distance < least) {
            least = distance;
            nearest = &entry;
        }
    }
    return nearest->index;
}

}  // namespace pantile::picture
