#include "core/exact_math.h"

#include <bit>
#include <cassert>
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

}  // namespace pantile::core
