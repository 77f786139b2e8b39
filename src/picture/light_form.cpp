#include "picture/light_form.h"

#include <cmath>
#include <numbers>

#include "core/exact_math.h"

namespace pantile::picture {
namespace {

using core::LinearRgb;
using core::Xyz;

constexpr double kWhiteX = 0.95047;
constexpr double kWhiteZ = 1.08883;

// CIE 15: the cube root, and a line below (6/29)^3.
constexpr double kLineEnd = 216.0 / 24389;
constexpr double kLineSlope = 841.0 / 108;

double curveAt(double t) {
    return t > kLineEnd ? core::cubeRoot(t) : kLineSlope * t + 4.0 / 29;
}

// The curve's slope from p to q; where they all but meet, at p.
double slope(double p, double q, double curveP, double curveQ) {
    const double step = q - p;
    if (std::abs(step) > 1e-6) return (curveQ - curveP) / step;
    return p > kLineEnd ? 1 / (3 * curveP * curveP) : kLineSlope;
}

struct Direction {
    double cosine = 1;
    double sine = 0;

    // By the sum of angles: no function of the C library.
    Direction plus(const Direction& other) const {
        return {cosine * other.cosine - sine * other.sine,
                sine * other.cosine + cosine * other.sine};
    }
};

// T of CIEDE2000, its cosines of multiples of the hue by sums of angles.
double hueWeight(const Direction& hue) {
    const Direction twice = hue.plus(hue);
    const Direction thrice = twice.plus(hue);
    const Direction fourTimes = twice.plus(twice);
    constexpr Direction kMinus30{0.8660254037844387, -0.5};
    constexpr Direction kPlus6{0.9945218953682733, 0.10452846326765347};
    constexpr Direction kMinus63{0.4539904997395468, -0.8910065241883678};
    return 1 - 0.17 * hue.plus(kMinus30).cosine + 0.24 * twice.cosine +
           0.32 * thrice.plus(kPlus6).cosine - 0.20 * fourTimes.plus(kMinus63).cosine;
}

double seventhPower(double x) {
    const double cube = x * x * x;
    return cube * cube * x;
}

// sqrt(C^7 / (C^7 + 25^7)).
double chromaWeight(double chroma) {
    const double power = seventhPower(chroma);
    return std::sqrt(power / (power + 6103515625.0));
}

// exp(-x) for x >= 0 as (1 + x / 256)^-256, within a hundredth where it matters.
double decay(double x) {
    double value = 1 / (1 + x / 256);
    for (int i = 0; i < 8; ++i) value *= value;
    return value;
}

// R_T of CIEDE2000, which turns the differences of blues: -sin(60 exp(-((h - 275) / 25)²)) R_C in
// degrees. The angle's square is taken for twice what its cosine lacks, the sine for its series.
double blueTurn(const Direction& hue, double chroma) {
    constexpr Direction kMinus275{0.08715574274765817, 0.9961946980917455};
    constexpr double kPerRadian = 180 / std::numbers::pi / 25;
    const double off = 2 * (1 - hue.plus(kMinus275).cosine);
    const double angle = std::numbers::pi / 3 * decay(off * kPerRadian * kPerRadian);
    const double s = angle * angle;
    return -angle * (1 - s / 6 * (1 - s / 20 * (1 - s / 42))) * 2 * chromaWeight(chroma);
}

double square(double x) {
    return x * x;
}

LinearRgb scaled(const LinearRgb& v, double by) {
    return {v.r * by, v.g * by, v.b * by};
}

LinearRgb combined(const LinearRgb& v, double byV, const LinearRgb& w, double byW) {
    return {byV * v.r + byW * w.r, byV * v.g + byW * w.g, byV * v.b + byW * w.b};
}

}  // namespace

CurvedColour curved(const LinearRgb& light) {
    const Xyz xyz = core::toXyz(light);
    const Xyz relative{xyz.x / kWhiteX, xyz.y, xyz.z / kWhiteZ};
    return {light, relative, {curveAt(relative.x), curveAt(relative.y), curveAt(relative.z)}};
}

LightForm differenceForm(const CurvedColour& p, const CurvedColour& q) {
    const double slopeX = slope(p.relative.x, q.relative.x, p.curve.x, q.curve.x) / kWhiteX;
    const double slopeY = slope(p.relative.y, q.relative.y, p.curve.y, q.curve.y);
    const double slopeZ = slope(p.relative.z, q.relative.z, p.curve.z, q.curve.z) / kWhiteZ;
    const LinearRgb x = scaled({0.4124564, 0.3575761, 0.1804375}, slopeX);
    const LinearRgb y = scaled({0.2126729, 0.7151522, 0.0721750}, slopeY);
    const LinearRgb z = scaled({0.0193339, 0.1191920, 0.9503041}, slopeZ);

    const double l = 58 * (p.curve.y + q.curve.y) - 16;
    const double meanA = 250 * (p.curve.x - p.curve.y + q.curve.x - q.curve.y);
    const double b = 100 * (p.curve.y - p.curve.z + q.curve.y - q.curve.z);
    const double stretch = 1.5 - 0.5 * chromaWeight(std::sqrt(meanA * meanA + b * b));
    const double a = meanA * stretch;
    const double chroma = std::sqrt(a * a + b * b);
    const Direction hue = chroma > 0 ? Direction{a / chroma, b / chroma} : Direction{};

    const LinearRgb alongA = combined(x, 500 * stretch, y, -500 * stretch);
    const LinearRgb alongB = combined(y, 200, z, -200);
    const double chromaScale = 1 + 0.045 * chroma;
    const double hueScale = 1 + 0.015 * chroma * hueWeight(hue);
    const LinearRgb alongChroma =
        combined(alongA, hue.cosine / chromaScale, alongB, hue.sine / chromaScale);
    const LinearRgb alongHue =
        combined(alongB, hue.cosine / hueScale, alongA, -hue.sine / hueScale);
    const double turn = blueTurn(hue, chroma);
    const double lOff = square(l - 50);
    LightForm form;
    form.addSquare(scaled(y, 116), 1 / square(1 + 0.015 * lOff / std::sqrt(20 + lOff)));
    form.addSquare(alongChroma, 1);
    form.addSquare(alongHue, 1);
    // The product of both, as a difference of squares.
    form.addSquare(combined(alongChroma, 1, alongHue, 1), turn / 4);
    form.addSquare(combined(alongChroma, 1, alongHue, -1), -turn / 4);
    return form;
}

}  // namespace pantile::picture
