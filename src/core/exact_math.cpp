#include "core/exact_math.h"

#include <bit>
#include <cassert>
#include <cmath>
#include <cstdint>

namespace pantile::core {
namespace {

// Dividing the bits of a double by n divides its exponent by n: a first guess within a few per
// cent.
double firstGuess(double value, std::uint64_t n) {
    constexpr std::uint64_t kBias = std::uint64_t{1023} << 52U;
    const auto bits = std::bit_cast<std::uint64_t>(value);
    return std::bit_cast<double>(bits / n + (kBias - kBias / n));
}

constexpr int kNewtonSteps = 6;  // each doubles the number of right digits
constexpr double kSmallest = 1e-300;
constexpr double kLn2 = 0.693147180559945309417232121458;
constexpr double kPi = 3.14159265358979323846264338328;

// By 2 artanh((m - 1) / (m + 1)) for the part m in sqrt(1/2)..sqrt(2).
double naturalLog(double value) {
    constexpr double kHalfRoot = 0.70710678118654752440;
    constexpr int kTerms = 12;
    int exponent = 0;
    double part = std::frexp(value, &exponent);  // exact
    if (part < kHalfRoot) {
        part *= 2;
        --exponent;
    }
    const double z = (part - 1) / (part + 1);
    double series = 0;
    for (int i = kTerms; i >= 0; --i) series = series * z * z + 1.0 / (2 * i + 1);
    return exponent * kLn2 + 2 * z * series;
}

// By Taylor's series for the part within half a ln 2 of 0.
double exponential(double value) {
    constexpr int kTerms = 16;
    const double twos = std::floor(value / kLn2 + 0.5);
    const double part = value - twos * kLn2;
    double series = 1;
    for (int i = kTerms; i >= 1; --i) series = 1 + series * part / i;
    return std::ldexp(series, static_cast<int>(twos));  // exact
}

}  // namespace

double cubeRoot(double value) {
    if (value < 0) return -cubeRoot(-value);
    if (value < kSmallest) return 0;
    double root = firstGuess(value, 3);
    for (int i = 0; i < kNewtonSteps; ++i) root = (2 * root + value / (root * root)) / 3;
    return root;
}

double fifthRoot(double value) {
    assert(value >= 0);
    if (value < kSmallest) return 0;
    double root = firstGuess(value, 5);
    for (int i = 0; i < kNewtonSteps; ++i) {
        const double square = root * root;
        root = (4 * root + value / (square * square)) / 5;
    }
    return root;
}

double power(double base, double exponent) {
    assert(base >= 0);
    if (base < kSmallest) return 0;
    return exponential(exponent * naturalLog(base));
}

double sinPi(double x) {
    constexpr int kTerms = 12;
    const double turns = std::floor(x + 0.5);
    const double angle = kPi * (x - turns);  // within a quarter turn
    double series = 1;
    for (int i = kTerms; i >= 1; --i) series = 1 - series * angle * angle / (2 * i * (2 * i + 1));
    const bool odd = std::floor(turns / 2) * 2 != turns;
    return odd ? -angle * series : angle * series;
}

}  // namespace pantile::core
