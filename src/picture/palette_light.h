#pragma once

// A palette in linear light: what dithers reckon with.

#include <vector>

#include "core/colour_spaces.h"
#include "core/palette.h"
#include "picture/nearest_colour.h"

namespace pantile::picture {

class PaletteLight {
public:
    explicit PaletteLight(const core::Palette& palette);

    /// The entry to show where `wanted` is asked for, error included: nearest in OKLab with chroma
    /// counted twice, channels cut to 0..2 first.
    core::PaletteIndex nearest(const core::LinearRgb& wanted) const;

    /// What of `wanted` the entry `shown` leaves, each channel bounded by the palette's widest gap.
    core::LinearRgb error(const core::LinearRgb& wanted, core::PaletteIndex shown) const;

    const core::LinearRgb& operator[](core::PaletteIndex index) const { return m_light[index]; }

private:
    NearestColour m_nearest;
    std::vector<core::LinearRgb> m_light;
    double m_widestGap = 0;
};

}  // namespace pantile::picture
