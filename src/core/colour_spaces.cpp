#include "core/colour_spaces.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numbers>

#include "core/exact_math.h"

namespace pantile::core {
namespace {

// x^2.4 and x^(1/2.4) by roots alone: see exact_math.h.
double power2_4(double x) {
    const double fifth = fifthRoot(x);
    return x * x * fifth * fifth;
}

double root2_4(double x) {
    const double twelfth = cubeRoot(std::sqrt(std::sqrt(x)));
    const double square = twelfth * twelfth;
    return square * square * twelfth;
}

std::array<double, 256> makeLinearTable() {
    std::array<double, 256> table{};
    for (std::size_t i = 0; i < table.size(); ++i)
        table[i] = srgbToLinear(static_cast<double>(i) / 255);
    return table;
}

// CIE 15: the cube root above (6/29)^3, the tangent line below it.
double labCurve(double t) {
    constexpr double kDelta = 6.0 / 29.0;
    if (t > kDelta * kDelta * kDelta) return cubeRoot(t);
    return t / (3 * kDelta * kDelta) + 4.0 / 29.0;
}

OkLab okLabFromCones(double l, double m, double s) {
    const double lRoot = cubeRoot(l);
    const double mRoot = cubeRoot(m);
    const double sRoot = cubeRoot(s);
    return {0.2104542553 * lRoot + 0.7936177850 * mRoot - 0.0040720468 * sRoot,
            1.9779984951 * lRoot - 2.4285922050 * mRoot + 0.4505937099 * sRoot,
            0.0259040371 * lRoot + 0.7827717662 * mRoot - 0.8086757660 * sRoot};
}

}  // namespace

double srgbToLinear(double encoded) {
    if (encoded <= 0.04045) return encoded / 12.92;
    return power2_4((encoded + 0.055) / 1.055);
}

double linearToSrgb(double linear) {
    if (!(linear > 0)) return 0;
    if (linear >= 1) return 1;
    if (linear <= 0.0031308) return linear * 12.92;
    return 1.055 * root2_4(linear) - 0.055;
}

double srgb8ToLinear(std::uint8_t value) {
    static const std::array<double, 256> kTable = makeLinearTable();
    return kTable[value];
}

std::uint8_t linearToSrgb8(double linear) {
    return static_cast<std::uint8_t>(std::floor(linearToSrgb(linear) * 255 + 0.5));
}

LinearRgb toLinear(Rgb8 colour) {
    return {srgb8ToLinear(colour.r), srgb8ToLinear(colour.g), srgb8ToLinear(colour.b)};
}

Rgb8 toRgb8(const LinearRgb& colour) {
    return {linearToSrgb8(colour.r), linearToSrgb8(colour.g), linearToSrgb8(colour.b)};
}

Xyz toXyz(const LinearRgb& colour) {
    return {0.4124564 * colour.r + 0.3575761 * colour.g + 0.1804375 * colour.b,
            0.2126729 * colour.r + 0.7151522 * colour.g + 0.0721750 * colour.b,
            0.0193339 * colour.r + 0.1191920 * colour.g + 0.9503041 * colour.b};
}

Lab toLab(const Xyz& colour) {
    const double fx = labCurve(colour.x / 0.95047);
    const double fy = labCurve(colour.y);
    const double fz = labCurve(colour.z / 1.08883);
    return {116 * fy - 16, 500 * (fx - fy), 200 * (fy - fz)};
}

Lab toLab(Rgb8 colour) {
    return toLab(toXyz(toLinear(colour)));
}

OkLab toOkLab(const Xyz& colour) {
    return okLabFromCones(
        0.8189330101 * colour.x + 0.3618667424 * colour.y - 0.1288597137 * colour.z,
        0.0329845436 * colour.x + 0.9293118715 * colour.y + 0.0361456387 * colour.z,
        0.0482003018 * colour.x + 0.2643662691 * colour.y + 0.6338517070 * colour.z);
}

OkLab toOkLab(const LinearRgb& colour) {
    return okLabFromCones(
        0.4122214708 * colour.r + 0.5363325363 * colour.g + 0.0514459929 * colour.b,
        0.2119034982 * colour.r + 0.6806995451 * colour.g + 0.1073969566 * colour.b,
        0.0883024619 * colour.r + 0.2817188376 * colour.g + 0.6299787005 * colour.b);
}

OkLab toOkLab(Rgb8 colour) {
    return toOkLab(toLinear(colour));
}

LinearRgb toLinear(const OkLab& colour) {
    const double lRoot = colour.l + 0.3963377774 * colour.a + 0.2158037573 * colour.b;
    const double mRoot = colour.l - 0.1055613458 * colour.a - 0.0638541728 * colour.b;
    const double sRoot = colour.l - 0.0894841775 * colour.a - 1.2914855480 * colour.b;
    const double l = lRoot * lRoot * lRoot;
    const double m = mRoot * mRoot * mRoot;
    const double s = sRoot * sRoot * sRoot;
    return {4.0767416621 * l - 3.3077115913 * m + 0.2309699292 * s,
            -1.2684380046 * l + 2.6097574011 * m - 0.3413193965 * s,
            -0.0041960863 * l - 0.7034186147 * m + 1.7076147010 * s};
}

OkLch toOkLch(const OkLab& colour) {
    const double degrees = std::atan2(colour.b, colour.a) * 180 / std::numbers::pi;
    return {colour.l, std::sqrt(colour.a * colour.a + colour.b * colour.b),
            degrees < 0 ? degrees + 360 : degrees};
}

OkLab toOkLab(const OkLch& colour) {
    const double radians = colour.h * std::numbers::pi / 180;
    return {colour.l, colour.c * std::cos(radians), colour.c * std::sin(radians)};
}

}  // namespace pantile::core
