#include "core/exact_math.h"

#include <cmath>
#include <numbers>

#include <gtest/gtest.h>

namespace pantile::core {
namespace {

// Reference: the C library, which is within one unit in the last place of the true root.
constexpr double kTolerance = 1e-15;

TEST(ExactMath, CubeRootAgreesWithTheLibrary) {
    for (double value = 1e-12; value < 1e6; value *= 1.01) {
        EXPECT_NEAR(cubeRoot(value) / std::cbrt(value), 1, kTolerance) << value;
        EXPECT_EQ(cubeRoot(-value), -cubeRoot(value)) << value;
    }
}

TEST(ExactMath, FifthRootAgreesWithTheLibrary) {
    for (double value = 1e-12; value < 1e6; value *= 1.01) {
        EXPECT_NEAR(fifthRoot(value) / std::pow(value, 0.2), 1, kTolerance) << value;
    }
}

TEST(ExactMath, PowersAgreeWithTheLibrary) {
    for (double base = 1e-9; base < 1e3; base *= 1.07) {
        for (const double exponent : {0.1, 0.4545, 1.0, 2.2, 7.5})
            EXPECT_NEAR(power(base, exponent) / std::pow(base, exponent), 1, 1e-13) << base;
    }
    EXPECT_EQ(power(0, 2.2), 0);
    EXPECT_EQ(power(1, 2.2), 1);
}

TEST(ExactMath, SinesAgreeWithTheLibrary) {
    for (double x = -3; x <= 3; x += 0.013) {
        // Near 0, and of more digits than ours where the machine has them, so that pi's own
        // rounding plays no part.
        const double near = std::remainder(x, 2.0);
        const long double wanted = std::sin(std::numbers::pi_v<long double> * near);
        EXPECT_NEAR(sinPi(x), static_cast<double>(wanted), 1e-15) << x;
    }
    EXPECT_EQ(sinPi(5), 0);
    EXPECT_DOUBLE_EQ(sinPi(0.5), 1);
    EXPECT_DOUBLE_EQ(sinPi(1.5), -1);
}

TEST(ExactMath, RootsOfWholePowersAreRight) {
    EXPECT_DOUBLE_EQ(cubeRoot(27), 3);
    EXPECT_DOUBLE_EQ(cubeRoot(1), 1);
    EXPECT_EQ(cubeRoot(0), 0);
    EXPECT_DOUBLE_EQ(fifthRoot(243), 3);
    EXPECT_EQ(fifthRoot(0), 0);
}

}  // namespace
}  // namespace pantile::core
