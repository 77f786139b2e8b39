#include "picture/adjust.h"

#include <algorithm>
#include <array>
#include <cstddef>
#include <string>

#include "core/exact_math.h"
#include "core/range_check.h"

namespace pantile::picture {
namespace {

using core::Error;
using core::ErrorKind;
using core::LinearRgb;
using core::Result;

constexpr double kLeastGamma = 0.1;
constexpr double kMostGamma = 10;

// sRGB's encoded values 0..1: equal steps look about equal.
struct Encoded {
    double r = 0;
    double g = 0;
    double b = 0;

    // Rec. ITU-R BT.709 luma.
    double luma() const { return 0.2126 * r + 0.7152 * g + 0.0722 * b; }

    template <typename Change>
    Encoded changed(Change change) const {
        return {change(r), change(g), change(b)};
    }
};

Encoded encoded(const LinearRgb& light) {
    return {core::linearToSrgb(light.r), core::linearToSrgb(light.g), core::linearToSrgb(light.b)};
}

LinearRgb decoded(const Encoded& colour) {
    const auto light = [](double value) { return core::srgbToLinear(std::clamp(value, 0.0, 1.0)); };
    return {light(colour.r), light(colour.g), light(colour.b)};
}

// Calls `change` with each visible cell's encoded colour and puts its answer there.
template <typename Change>
void changeEach(LinearPicture& picture, Change change) {
    for (LinearPixel& pixel : picture.pixels) {
        if (pixel.alpha > 0) pixel.colour = decoded(change(encoded(pixel.colour)));
    }
}

// One cell in 200 at either end may be an outlier.
void stretchLevels(LinearPicture& picture) {
    constexpr std::size_t kOutliersOneIn = 200;
    constexpr double kLeastSpread = 1.0 / 255;
    std::vector<double> lumas;
    for (const LinearPixel& pixel : picture.pixels) {
        if (pixel.alpha > 0) lumas.push_back(encoded(pixel.colour).luma());
    }
    if (lumas.empty()) return;
    std::sort(lumas.begin(), lumas.end());
    const std::size_t outliers = lumas.size() / kOutliersOneIn;
    const double darkest = lumas[outliers];
    const double spread = lumas[lumas.size() - 1 - outliers] - darkest;
    if (spread < kLeastSpread) return;
    changeEach(picture, [=](const Encoded& colour) {
        return colour.changed([=](double value) { return (value - darkest) / spread; });
    });
}

void applyTones(LinearPicture& picture, const Adjustments& adjustments) {
    const double more = adjustments.brightness / 100.0;
    const double factor = 1 + adjustments.contrast / 100.0;
    const double exponent = 1 / adjustments.gamma;
    const auto tone = [=](double value) {
        const double bent = exponent == 1 ? value : core::power(value, exponent);
        return (std::clamp(bent + more, 0.0, 1.0) - 0.5) * factor + 0.5;
    };
    changeEach(picture, [&](const Encoded& colour) { return colour.changed(tone); });
}

void applySaturation(LinearPicture& picture, int percent) {
    const double factor = 1 + percent / 100.0;
    for (LinearPixel& pixel : picture.pixels) {
        if (!(pixel.alpha > 0)) continue;
        core::OkLab lab = core::toOkLab(pixel.colour);
        lab.a *= factor;
        lab.b *= factor;
        pixel.colour = core::toLinear(lab);
        for (double* value : {&pixel.colour.r, &pixel.colour.g, &pixel.colour.b})
            *value = std::clamp(*value, 0.0, 1.0);
    }
}

// The mean luma about a cell, by weights 1 2 1 both ways and by alpha.
double lumaAround(const LinearPicture& picture, const std::vector<double>& lumas, int x, int y) {
    double sum = 0;
    double weights = 0;
    for (int row = std::max(0, y - 1); row <= std::min(picture.size.height - 1, y + 1); ++row) {
        for (int column = std::max(0, x - 1); column <= std::min(picture.size.width - 1, x + 1);
             ++column) {
            const auto at =
                static_cast<std::size_t>(row) * static_cast<std::size_t>(picture.size.width) +
                static_cast<std::size_t>(column);
            const double weight =
                picture.pixels[at].alpha * (row == y ? 2 : 1) * (column == x ? 2 : 1);
            sum += weight * lumas[at];
            weights += weight;
        }
    }
    return sum / weights;
}

// Only luma, so that no coloured fringes come up.
void sharpen(LinearPicture& picture, int percent) {
    std::vector<double> lumas;
    lumas.reserve(picture.pixels.size());
    for (const LinearPixel& pixel : picture.pixels) lumas.push_back(encoded(pixel.colour).luma());
    for (std::size_t i = 0; i < picture.pixels.size(); ++i) {
        LinearPixel& pixel = picture.pixels[i];
        if (!(pixel.alpha > 0)) continue;
        const int x = static_cast<int>(i) % picture.size.width;
        const int y = static_cast<int>(i) / picture.size.width;
        const double more = (lumas[i] - lumaAround(picture, lumas, x, y)) * percent / 100.0;
        pixel.colour =
            decoded(encoded(pixel.colour).changed([more](double value) { return value + more; }));
    }
}

}  // namespace

Result<void> checkAdjustments(const Adjustments& adjustments) {
    if (!(adjustments.gamma >= kLeastGamma && adjustments.gamma <= kMostGamma))
        return Error{ErrorKind::InvalidInput,
                     "the gamma " + std::to_string(adjustments.gamma) + " is outside 0.1 to 10",
                     "choose a value in that range; 1 changes nothing"};
    PANTILE_RETURN_IF_ERROR(core::checkRange("the brightness", adjustments.brightness, -100, 100));
    PANTILE_RETURN_IF_ERROR(core::checkRange("the contrast", adjustments.contrast, -100, 100));
    PANTILE_RETURN_IF_ERROR(core::checkRange("the saturation", adjustments.saturation, -100, 100));
    return core::checkRange("the sharpening", adjustments.sharpen, 0, 100);
}

LinearPicture adjusted(LinearPicture picture, const Adjustments& adjustments) {
    if (adjustments.levels) stretchLevels(picture);
    if (adjustments.gamma != 1 || adjustments.brightness != 0 || adjustments.contrast != 0)
        applyTones(picture, adjustments);
    if (adjustments.saturation != 0) applySaturation(picture, adjustments.saturation);
    if (adjustments.sharpen != 0) sharpen(picture, adjustments.sharpen);
    return picture;
}

}  // namespace pantile::picture
