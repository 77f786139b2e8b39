#include "codec/logistic.h"

#include <cmath>

#include <gtest/gtest.h>

namespace pantile::codec {
namespace {

// Against the logistic function itself, from the C++ library.
TEST(Logistic, StaysCloseToTheFunction) {
    for (Logit logit = -kLargestLogit; logit <= kLargestLogit; ++logit) {
        const double exact = 65536 / (1 + std::exp(-logit / 256.0));
        ASSERT_NEAR(probabilityOf(logit), exact, 1 + exact * 0.035) << logit;
    }
    EXPECT_EQ(probabilityOf(0), kCertain / 2);
    EXPECT_EQ(probabilityOf(5000), probabilityOf(kLargestLogit));
    EXPECT_EQ(probabilityOf(-5000), probabilityOf(-kLargestLogit));
}

TEST(Logistic, NeverFalls) {
    for (Logit logit = -kLargestLogit; logit < kLargestLogit; ++logit) {
        ASSERT_LE(probabilityOf(logit), probabilityOf(logit + 1)) << logit;
    }
}

TEST(Logistic, HasAnInverse) {
    for (Probability probability = 0; probability < kCertain; ++probability) {
        const Logit logit = logitOf(probability);
        const Probability middle = (probability & ~15U) + 8;
        if (logit < kLargestLogit) {
            ASSERT_GE(probabilityOf(logit), middle) << probability;
        }
        if (logit > -kLargestLogit) {
            ASSERT_LT(probabilityOf(logit - 1), middle) << probability;
        }
    }
}

}  // namespace
}  // namespace pantile::codec
