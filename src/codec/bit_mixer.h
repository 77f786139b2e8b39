#pragma once

// Foretells a yes/no decision from several contexts at once: each context remembers how often 'yes'
// was right where it held before, and their logits are mixed with weights that learn. Logistic
// mixing after Mahoney, "Adaptive Weighing of Context Models for Lossless Data Compression"
// (2005). Authority: docs/code-format.md, section 14.

#include <algorithm>
#include <array>
#include <cstddef>
#include <cstdint>
#include <vector>

#include "codec/bit_coder.h"
#include "codec/logistic.h"

namespace pantile::codec {

/// A weight in 1/65536.
using Weight = std::int32_t;

inline constexpr Weight kWeightOne = 1 << 16;

inline constexpr std::uint8_t kMostSeen = 120;

/// How far a probability moves after so many decisions, in 1/65536: 1/1.3 first, then 1/2.3, ...
inline constexpr auto kLearningRates = [] {
    std::array<std::int32_t, kMostSeen + 1> rates{};
    for (std::int32_t seen = 0; seen <= kMostSeen; ++seen) {
        rates[static_cast<std::size_t>(seen)] = (10 << kProbabilityBits) / (10 * seen + 13);
    }
    return rates;
}();

/// A probability that moves towards what it sees.
struct Learned {
    std::uint16_t yes = kCertain / 2;  ///< Probability.
    std::uint8_t seen = 0;
    std::uint8_t tag = 0;  ///< Tells contexts apart that share a place in a table.

    void learn(bool bit) {
        const std::int64_t way = (bit ? std::int64_t{kCertain} - 1 : 0) - yes;
        yes = static_cast<std::uint16_t>(yes + ((way * kLearningRates[seen]) >> kProbabilityBits));
        if (seen < kMostSeen) ++seen;
    }
};

/// `kContexts` tables, and `kChoosers` sets of weights, of which each chooser takes one. The first
/// chooser also takes the weights with which the choosers' results are mixed.
template <std::size_t kContexts, std::size_t kChoosers>
class BitMixer {
public:
    static constexpr std::size_t kInputs = kContexts + 1;  ///< The last one always says 1.
    using Weights = std::array<Weight, kInputs>;
    using StartWeights = std::array<std::vector<Weights>, kChoosers>;  ///< By chooser and choice.

    struct Question {
        std::array<std::uint64_t, kContexts> contexts{};  ///< Any numbers.
        std::array<std::size_t, kChoosers> choices{};     ///< Below the size of its start weights.
    };

    /// Each table has 2^tableBits places; no more memory is taken later.
    BitMixer(int tableBits, const StartWeights& start)
        : m_tableBits(tableBits), m_weights(start), m_mixed(start[0].size()) {
        for (auto& table : m_tables)
            table.resize(std::size_t{1} << static_cast<unsigned>(tableBits));
        for (auto& weights : m_mixed) weights.fill(kWeightOne / static_cast<Weight>(kChoosers));
    }

    /// Puts down or reads one decision, and learns from it.
    bool code(BitCoder& coder, bool bit, const Question& question) {
        std::array<Learned*, kContexts> places;
        std::array<Logit, kInputs> inputs;
        for (std::size_t i = 0; i < kContexts; ++i) {
            places[i] = &place(i, question.contexts[i]);
            inputs[i] = places[i]->seen == 0 ? 0 : logitOf(places[i]->yes);
        }
        inputs[kContexts] = kBias;

        std::array<Logit, kChoosers> logits;
        for (std::size_t i = 0; i < kChoosers; ++i) {
            logits[i] = mixed(m_weights[i][question.choices[i]], inputs);
        }
        auto& last = m_mixed[question.choices[0]];
        const Probability yes = probabilityOf(mixed(last, logits));
        bit = coder.code(bit, yes);

        adjust(last, logits, bit, yes, kLastRate);
        for (std::size_t i = 0; i < kChoosers; ++i) {
            adjust(m_weights[i][question.choices[i]], inputs, bit, probabilityOf(logits[i]), kRate);
        }
        for (Learned* learned : places) learned->learn(bit);
        return bit;
    }

    /// As they are now: what training takes its start from.
    const StartWeights& weights() const { return m_weights; }

private:
    static constexpr Logit kBias = 256;
    static constexpr std::int32_t kRate = 12;  // In 1/2^22.
    static constexpr std::int32_t kLastRate = 64;
    static constexpr int kRateBits = 22;
    static constexpr std::uint64_t kSpread = 0x9E3779B97F4A7C15U;  // 2^64 by the golden ratio.

    Learned& place(std::size_t table, std::uint64_t context) {
        const std::uint64_t spread = context * kSpread;
        const auto bits = static_cast<unsigned>(m_tableBits);
        const auto tag = static_cast<std::uint8_t>(spread >> (56U - bits));
        Learned& learned = m_tables[table][spread >> (64U - bits)];
        if (learned.tag != tag) learned = {.tag = tag};
        return learned;
    }

    template <std::size_t kCount>
    static Logit mixed(const std::array<Weight, kCount>& weights,
                       const std::array<Logit, kCount>& inputs) {
        std::int64_t sum = 0;
        for (std::size_t i = 0; i < kCount; ++i) sum += std::int64_t{weights[i]} * inputs[i];
        return static_cast<Logit>(
            std::clamp<std::int64_t>(sum >> 16, -kLargestLogit, kLargestLogit));
    }

    // Nothing is cut here: a weight moves by less than 2^11, and a code has less than 2^18
    // decisions.
    template <std::size_t kCount>
    static void adjust(std::array<Weight, kCount>& weights, const std::array<Logit, kCount>& inputs,
                       bool bit, Probability yes, std::int32_t rate) {
        constexpr std::int64_t kHalf = std::int64_t{1} << (kRateBits - 1);
        const std::int64_t missed = (bit ? std::int64_t{kCertain} : 0) - std::int64_t{yes};
        const std::int64_t step = missed * rate;
        for (std::size_t i = 0; i < kCount; ++i) {
            weights[i] += static_cast<Weight>((step * inputs[i] + kHalf) >> kRateBits);
        }
    }

    int m_tableBits;
    std::array<std::vector<Learned>, kContexts> m_tables;
    StartWeights m_weights;
    std::vector<std::array<Weight, kChoosers>> m_mixed;
};

}  // namespace pantile::codec
