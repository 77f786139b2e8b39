#include "core/exact_math.h"

#include <cmath>

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

TEST(ExactMath, RootsOfWholePowersAreRight) {
    EXPECT_DOUBLE_EQ(cubeRoot(27), 3);
    EXPECT_DOUBLE_EQ(cubeRoot(1), 1);
    EXPECT_EQ(cubeRoot(0), 0);
    EXPECT_DOUBLE_EQ(fifthRoot(243), 3);
    EXPECT_EQ(fifthRoot(0), 0);
}

}  // namespace
}  // namespace pantile::core
