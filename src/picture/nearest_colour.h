#pragma once

// The palette entry that looks most like a colour: least Euclidean distance in OKLab. See
// docs/conversion.md sections 6 and 7.

#include <vector>

#include "core/colour_spaces.h"
#include "core/palette.h"

namespace pantile::picture {

class NearestColour {
public:
    /// Differences of a and b count `chromaWeight` times as much as those of lightness.
    explicit NearestColour(const core::Palette& palette, double chromaWeight = 1);

    /// Never the transparent entry; of entries equally near, the one with the lower index.
    core::PaletteIndex find(const core::OkLab& colour) const;

    core::PaletteIndex find(core::Rgb8 colour) const { return find(core::toOkLab(colour)); }

private:
    struct Entry {
        core::OkLab colour;
        core::PaletteIndex index = 0;
    };

    core::OkLab weighted(const core::OkLab& colour) const {
        return {colour.l, m_chromaWeight * colour.a, m_chromaWeight * colour.b};
    }

    double m_chromaWeight;
    std::vector<Entry> m_entries;
};

}  // namespace pantile::picture
