#include "codec/logistic.h"

namespace pantile::codec {
namespace {

constexpr int kStepBits = 7;
constexpr Logit kStep = 1 << kStepBits;
constexpr Logit kLowestKnot = -2048;

// 65536 / (1 + e^(-x / 256)), rounded, for x = -2048, -1920, ..., 2048. Part of the format.
constexpr std::array<Probability, 33> kKnots = {
    22,    36,    60,    98,    162,   267,   439,   720,   1179,  1921,  3108,
    4971,  7812,  11955, 17625, 24743, 32768, 40793, 47911, 53581, 57724, 60565,
    62428, 63615, 64357, 64816, 65097, 65269, 65374, 65438, 65476, 65500, 65514,
};

constexpr Probability interpolated(Logit logit) {
    const Logit above = std::clamp(logit, -kLargestLogit, kLargestLogit) - kLowestKnot;
    const auto knot = static_cast<std::size_t>(above >> kStepBits);
    const auto part = static_cast<Probability>(above & (kStep - 1));
    return (kKnots[knot] * (kStep - part) + kKnots[knot + 1] * part + kStep / 2) >> kStepBits;
}

constexpr std::size_t kCoarseCount = std::size_t{kCertain} >> kCoarseBits;

constexpr std::array<std::int16_t, kCoarseCount> makeLogits() {
    std::array<std::int16_t, kCoarseCount> logits{};
    Logit logit = -kLargestLogit;
    for (std::size_t i = 0; i < kCoarseCount; ++i) {
        const auto middle =
            static_cast<Probability>((i << kCoarseBits) + (1U << (kCoarseBits - 1)));
        while (logit < kLargestLogit && interpolated(logit) < middle) ++logit;
        logits[i] = static_cast<std::int16_t>(logit);
    }
    return logits;
}

constexpr std::array<std::uint16_t, 2 * kLargestLogit + 1> makeProbabilities() {
    std::array<std::uint16_t, 2 * kLargestLogit + 1> probabilities{};
    for (Logit logit = -kLargestLogit; logit <= kLargestLogit; ++logit) {
        const Logit place = logit + kLargestLogit;
        probabilities[static_cast<std::size_t>(place)] =
            static_cast<std::uint16_t>(interpolated(logit));
    }
    return probabilities;
}

}  // namespace

constexpr std::array<std::uint16_t, 2 * kLargestLogit + 1> kProbabilities = makeProbabilities();
constexpr std::array<std::int16_t, kCoarseCount> kLogits = makeLogits();

}  // namespace pantile::codec
