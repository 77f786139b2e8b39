#include "core/colour_difference.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace pantile::core {
namespace {

constexpr double kDegree = std::numbers::pi / 180;

double seventhPower(double x) {
    const double cube = x * x * x;
    return cube * cube * x;
}

// Of such small numbers; std::hypot takes four times as long to allow for large ones.
double length(double x, double y) {
    return std::sqrt(x * x + y * y);
}

double hueDegrees(double a, double b) {
    if (a == 0 && b == 0) return 0;
    const double degrees = std::atan2(b, a) / kDegree;
    return degrees < 0 ? degrees + 360 : degrees;
}

// Hues that differ by exactly 180 degrees must count as 180 whatever rounding does to them (pair 14
// of the published table), so the comparison is against a hair more.
constexpr double kHalfTurn = 180 + 1e-9;

struct Hues {
    double difference = 0;
    double mean = 0;
};

Hues hues(double h1, double h2, bool anyGrey) {
    if (anyGrey) return {0, h1 + h2};
    const double gap = h2 - h1;
    if (std::abs(gap) <= kHalfTurn) return {gap, (h1 + h2) / 2};
    const double sum = h1 + h2;
    return {gap > 0 ? gap - 360 : gap + 360, (sum < 360 ? sum + 360 : sum - 360) / 2};
}

}  // namespace

double chromaWeight(double c) {
    const double c7 = seventhPower(c);
    return std::sqrt(c7 / (c7 + seventhPower(25)));
}

StretchedChromas stretchedChromas(const Lab& p, const Lab& q) {
    const double meanC = (length(p.a, p.b) + length(q.a, q.b)) / 2;
    const double stretch = 1 + 0.5 * (1 - chromaWeight(meanC));
    const double a1 = p.a * stretch;
    const double a2 = q.a * stretch;
    return {a1, a2, length(a1, p.b), length(a2, q.b)};
}

double ciede2000(const Lab& p, const Lab& q) {
    const auto [a1, a2, c1, c2] = stretchedChromas(p, q);
    const Hues hue = hues(hueDegrees(a1, p.b), hueDegrees(a2, q.b), c1 * c2 == 0);

    const double dL = q.l - p.l;
    const double dC = c2 - c1;
    const double dH = 2 * std::sqrt(c1 * c2) * std::sin(hue.difference / 2 * kDegree);

    const double l = (p.l + q.l) / 2;
    const double c = (c1 + c2) / 2;
    const double h = hue.mean;
    const double t = 1 - 0.17 * std::cos((h - 30) * kDegree) + 0.24 * std::cos(2 * h * kDegree) +
                     0.32 * std::cos((3 * h + 6) * kDegree) -
                     0.20 * std::cos((4 * h - 63) * kDegree);
    const double turn = (h - 275) / 25;
    const double rotation = 30 * std::exp(-turn * turn);
    const double lOff = (l - 50) * (l - 50);
    const double sL = 1 + 0.015 * lOff / std::sqrt(20 + lOff);
    const double sC = 1 + 0.045 * c;
    const double sH = 1 + 0.015 * c * t;
    const double rT = -std::sin(2 * rotation * kDegree) * 2 * chromaWeight(c);

    const double partL = dL / sL;
    const double partC = dC / sC;
    const double partH = dH / sH;
    const double sum = partL * partL + partC * partC + partH * partH + rT * partC * partH;
    return std::sqrt(std::max(sum, 0.0));
}

}  // namespace pantile::core
