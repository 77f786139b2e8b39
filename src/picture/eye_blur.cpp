#include "picture/eye_blur.h"

#include <algorithm>
#include <array>
#include <cstddef>

namespace pantile::picture {
namespace {

constexpr std::size_t kTaps = 2 * kEyeReach + 1;

// exp(-1 / (2 * 1.5²)) by itself as often as the squared distance: no function of the C library,
// whose last bits differ from one machine to another.
std::array<double, kTaps> makeWeights() {
    constexpr double kFactor = 0.8007374029168081;
    std::array<double, kTaps> weights{};
    double sum = 0;
    for (int tap = 0; tap <= 2 * kEyeReach; ++tap) {
        const int distance = tap - kEyeReach;
        double& weight = weights[static_cast<std::size_t>(tap)];
        weight = 1;
        for (int i = 0; i < distance * distance; ++i) weight *= kFactor;
        sum += weight;
    }
    for (double& weight : weights) weight /= sum;
    return weights;
}

struct Light {
    core::LinearRgb colour;
    double weight = 0;

    void add(const Light& other, double share) {
        colour.r += share * other.colour.r;
        colour.g += share * other.colour.g;
        colour.b += share * other.colour.b;
        weight += share * other.weight;
    }
};

// `count` values, `stride` apart, blurred along themselves.
void blurLine(const Light* from, Light* to, int count, std::size_t stride) {
    const std::span<const double> weights = eyeWeights();
    for (int i = 0; i < count; ++i) {
        Light sum;
        const int last = std::min(count - 1, i + kEyeReach);
        for (int j = std::max(0, i - kEyeReach); j <= last; ++j) {
            const int tap = j - i + kEyeReach;
            sum.add(from[static_cast<std::size_t>(j) * stride],
                    weights[static_cast<std::size_t>(tap)]);
        }
        to[static_cast<std::size_t>(i) * stride] = sum;
    }
}

}  // namespace

std::span<const double> eyeWeights() {
    static const std::array<double, kTaps> kWeights = makeWeights();
    return kWeights;
}

CellColours blurredByEye(const CellColours& picture) {
    std::vector<Light> light;
    light.reserve(picture.cells.size());
    for (const auto& cell : picture.cells)
        light.push_back({cell.value_or(core::LinearRgb{}), cell ? 1.0 : 0.0});
    std::vector<Light> rows(light.size());
    const auto width = static_cast<std::size_t>(picture.size.width);
    const auto height = static_cast<std::size_t>(picture.size.height);
    for (std::size_t y = 0; y < height; ++y)
        blurLine(&light[y * width], &rows[y * width], picture.size.width, 1);
    for (std::size_t x = 0; x < width; ++x)
        blurLine(&rows[x], &light[x], picture.size.height, width);

    CellColours blurred{picture.size, {}};
    blurred.cells.reserve(light.size());
    for (std::size_t i = 0; i < light.size(); ++i) {
        const auto& [colour, weight] = light[i];
        blurred.cells.push_back(picture.cells[i]
                                    ? std::optional(core::LinearRgb{
                                          colour.r / weight, colour.g / weight, colour.b / weight})
                                    : std::nullopt);
    }
    return blurred;
}

}  // namespace pantile::picture
