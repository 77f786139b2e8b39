#include "draw/ink.h"

#include <optional>

namespace pantile::sample_art {

namespace {

constexpr double kLightnessStep = 0.20;

constexpr std::array<InkRamp, 6> kRamps = {{
    {"slate", 5, {0.17, 0.040, 265.0}, -0.008, -12.0},
    {"sand", 4, {0.27, 0.045, 50.0}, 0.008, 12.0},
    {"kelp", 2, {0.39, 0.075, 135.0}, 0.045, -15.0},
    {"sea", 2, {0.43, 0.085, 240.0}, 0.005, -20.0},
    {"red", 2, {0.39, 0.110, 25.0}, 0.080, 7.0},
    {"brass", 1, {0.79, 0.140, 82.0}, 0.0, 0.0},
}};

core::Palette paletteWith(std::optional<core::PaletteIndex> transparent) {
    std::vector<core::Rgb8> colours;
    for (const core::OkLch& recipe : inkRecipes())
        colours.push_back(core::toRgb8(core::toLinear(core::toOkLab(recipe))));
    // The transparent entry needs some colour in the file; black, as it is never seen.
    if (transparent) colours.push_back({});
    return *core::Palette::create(std::move(colours), transparent);
}

}  // namespace

std::span<const InkRamp> inkRamps() {
    return kRamps;
}

std::vector<core::OkLch> inkRecipes() {
    std::vector<core::OkLch> recipes;
    for (const InkRamp& ramp : kRamps) {
        for (int step = 0; step < ramp.count; ++step) {
            recipes.push_back({ramp.first.l + step * kLightnessStep,
                               ramp.first.c + step * ramp.chromaStep,
                               ramp.first.h + step * ramp.hueStep});
        }
    }
    return recipes;
}

core::Palette tidewrackPalette() {
    return paletteWith(std::nullopt);
}

core::Palette tidewrackSpritePalette() {
    return paletteWith(core::PaletteIndex{kInkCount});
}

}  // namespace pantile::sample_art
