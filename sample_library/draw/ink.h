#pragma once

// The sixteen colours of Tidewrack 16 by name, and the rule that makes them.
// The rule in words stands in sample_library/README.md.

#include <array>
#include <cstdint>
#include <span>
#include <string_view>
#include <vector>

#include "core/colour.h"
#include "core/colour_spaces.h"
#include "core/palette.h"

namespace pantile::sample_art {

/// A palette index. Stored in the committed textures: never renumber.
enum class Ink : std::uint8_t {
    Night,
    Slate,
    Stone,
    Mist,
    Foam,
    Tar,
    Bark,
    WetSand,
    DrySand,
    DeepKelp,
    Kelp,
    DeepSea,
    Sea,
    Rust,
    BuoyRed,
    Brass,
    Clear,  ///< Leave unpainted; only sprites have this seventeenth entry.
};

inline constexpr int kInkCount = 16;

/// A run of colours of one kind. Each step up adds 0.20 to the lightness, and the chroma and hue
/// steps.
struct InkRamp {
    std::string_view name;
    int count = 0;
    core::OkLch first;  ///< Hue in degrees.
    double chromaStep = 0;
    double hueStep = 0;
};

/// The ramps in the order of the palette.
std::span<const InkRamp> inkRamps();

/// The sixteen colours before they are rounded to 8 bits.
std::vector<core::OkLch> inkRecipes();

/// The rule, computed. Without the transparent entry.
core::Palette tidewrackPalette();

/// The sixteen colours and index 16, which leaves the cell unpainted.
core::Palette tidewrackSpritePalette();

}  // namespace pantile::sample_art
