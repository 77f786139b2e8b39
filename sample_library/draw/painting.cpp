#include "draw/painting.h"

#include <cmath>

namespace pantile::sample_art {

Light lightOf(std::string_view hex) {
    return core::toLinear(*core::parseHexColour(hex));
}

Light blend(const Light& from, const Light& to, double share) {
    return {mix(from.r, to.r, share), mix(from.g, to.g, share), mix(from.b, to.b, share)};
}

Light dimmed(const Light& light, double factor) {
    return {light.r * factor, light.g * factor, light.b * factor};
}

Light added(const Light& light, const Light& glow, double strength) {
    return {light.r + glow.r * strength, light.g + glow.g * strength, light.b + glow.b * strength};
}

double cloud(double x, double y, int layers, std::uint64_t seed) {
    double sum = 0.0;
    double total = 0.0;
    double strength = 1.0;
    for (int layer = 0; layer < layers; ++layer) {
        const int column = floorToInt(x);
        const int row = floorToInt(y);
        const double across = smoothStep(0.0, 1.0, x - column);
        const double down = smoothStep(0.0, 1.0, y - row);
        const std::uint64_t layerSeed = seed + static_cast<std::uint64_t>(layer);
        const double above =
            mix(chanceAt(column, row, layerSeed), chanceAt(column + 1, row, layerSeed), across);
        const double below = mix(chanceAt(column, row + 1, layerSeed),
                                 chanceAt(column + 1, row + 1, layerSeed), across);
        sum += strength * mix(above, below, down);
        total += strength;
        strength /= 2.0;
        x *= 2.0;
        y *= 2.0;
    }
    return sum / total;
}

double distanceToLine(double x, double y, Place from, Place to) {
    const double dx = to.x - from.x;
    const double dy = to.y - from.y;
    const double share = clampUnit(((x - from.x) * dx + (y - from.y) * dy) / (dx * dx + dy * dy));
    const double ax = x - from.x - dx * share;
    const double ay = y - from.y - dy * share;
    return std::sqrt(ax * ax + ay * ay);
}

double cover(double distance, double softness) {
    return 1.0 - smoothStep(-softness, softness, distance);
}

core::Pixels paintPicture(const std::function<Light(double x, double y)>& colourAt) {
    constexpr double kUnits = 640.0 / kPictureSize.width;
    core::Pixels picture;
    picture.size = kPictureSize;
    picture.pixels.reserve(static_cast<std::size_t>(kPictureSize.width) *
                           static_cast<std::size_t>(kPictureSize.height));
    for (int y = 0; y < kPictureSize.height; ++y) {
        for (int x = 0; x < kPictureSize.width; ++x) {
            Light sum;
            for (const double v : {0.25, 0.75})
                for (const double u : {0.25, 0.75})
                    sum = added(sum, colourAt((x + u) * kUnits, (y + v) * kUnits), 0.25);
            const core::Rgb8 colour = core::toRgb8(sum);
            picture.pixels.push_back({colour.r, colour.g, colour.b, 255});
        }
    }
    return picture;
}

}  // namespace pantile::sample_art
