#pragma once

// sRGB, linear light, CIE XYZ, CIELAB, OKLab and OKLCH.
// Sources: IEC 61966-2-1 (sRGB); CIE 15 (CIELAB), with the D65 white 0.95047 1 1.08883 and the
// matrix of B. Lindbloom, 'RGB/XYZ matrices'; B. Ottosson, 'A perceptual color space for image
// processing', 2020. All but OKLCH are computed by correctly rounded operations alone, so they give
// the same bits on every IEEE 754 machine.

#include <array>
#include <cstdint>

#include "core/colour.h"

namespace pantile::core {

/// Linear light of the sRGB primaries; 0..1 is the range of a screen.
struct LinearRgb {
    double r = 0;
    double g = 0;
    double b = 0;
};

struct Xyz {
    double x = 0;
    double y = 0;
    double z = 0;
};

/// CIELAB: l 0..100.
struct Lab {
    double l = 0;
    double a = 0;
    double b = 0;
};

/// OKLab: l 0..1.
struct OkLab {
    double l = 0;
    double a = 0;
    double b = 0;
};

/// OKLab in polar form; hue in degrees.
struct OkLch {
    double l = 0;
    double c = 0;
    double h = 0;
};

/// The sRGB transfer function, from an encoded value 0..1.
double srgbToLinear(double encoded);

/// Its inverse, from linear light; values outside 0..1 are cut to it.
double linearToSrgb(double linear);

/// srgbToLinear(value / 255) from a table.
double srgb8ToLinear(std::uint8_t value);

/// The nearest 8-bit sRGB value.
std::uint8_t linearToSrgb8(double linear);

LinearRgb toLinear(Rgb8 colour);
Rgb8 toRgb8(const LinearRgb& colour);

Xyz toXyz(const LinearRgb& colour);
Lab toLab(const Xyz& colour);
Lab toLab(Rgb8 colour);

OkLab toOkLab(const Xyz& colour);
OkLab toOkLab(const LinearRgb& colour);
OkLab toOkLab(Rgb8 colour);
LinearRgb toLinear(const OkLab& colour);

OkLch toOkLch(const OkLab& colour);
OkLab toOkLab(const OkLch& colour);

/// Squared Euclidean distance in OKLab.
inline double squaredDistance(const OkLab& p, const OkLab& q) {
    const double dl = p.l - q.l;
    const double da = p.a - q.a;
    const double db = p.b - q.b;
    return dl * dl + da * da + db * db;
}

}  // namespace pantile::core
