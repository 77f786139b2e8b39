#pragma once

// The palette entry that looks most like a colour: least Euclidean distance in OKLab. See
// docs/conversion.md section 6.

#include <vector>

#include "core/colour_spaces.h"
#include "core/palette.h"

namespace pantile::picture {

class NearestColour {
public:
    explicit NearestColour(const core::Palette& palette);

    /// Never the transparent entry; of entries equally near, the one with the lower index.
    core::PaletteIndex find(const core::OkLab& colour) const;

    core::PaletteIndex find(core::Rgb8 colour) const { return find(core::toOkLab(colour)); }

private:
    struct Entry {
        core::OkLab colour;
        core::PaletteIndex index = 0;
    };

    std::vector<Entry> m_entries;
};

}  // namespace pantile::picture
