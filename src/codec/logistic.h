#pragma once

// Probabilities and their logits, in whole numbers only, so that every machine codes the same
// bytes. Authority: docs/code-format.md, section 14.

#include <algorithm>
#include <array>
#include <cstddef>
#include <cstdint>

namespace pantile::codec {

/// The probability of 'yes' in 1/65536.
using Probability = std::uint32_t;

inline constexpr int kProbabilityBits = 16;
inline constexpr Probability kCertain = 1U << kProbabilityBits;

/// ln(p / (1 - p)) in 1/256, from -kLargestLogit to kLargestLogit.
using Logit = std::int32_t;

inline constexpr Logit kLargestLogit = 2047;

/// Probabilities that share a logit, as a power of two.
inline constexpr int kCoarseBits = 4;

/// What the two functions below look up.
extern const std::array<std::uint16_t, 2 * kLargestLogit + 1> kProbabilities;
extern const std::array<std::int16_t, (kCertain >> kCoarseBits)> kLogits;

/// 65536 / (1 + e^(-logit / 256)), by a table of 33 values with straight lines between them. Any
/// `logit` is taken; beyond the largest ones it is cut.
inline Probability probabilityOf(Logit logit) {
    const Logit place = std::clamp(logit, -kLargestLogit, kLargestLogit) + kLargestLogit;
    return kProbabilities[static_cast<std::size_t>(place)];
}

/// The inverse: the smallest logit whose probability is not below the middle of the sixteen
/// probabilities around `probability` (0..65535).
inline Logit logitOf(Probability probability) {
    return kLogits[probability >> kCoarseBits];
}

}  // namespace pantile::codec
