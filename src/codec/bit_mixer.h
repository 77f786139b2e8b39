#pragma once

// Foretells a yes/no decision from several contexts at once: each context remembers how often 'yes'
// was right where it held before, and their logits are mixed with weights that learn. Logistic
// mixing after Mahoney, "Adaptive Weighing of Context Models for Lossless Data Compression"
// (2005). Authority: docs/code-format.md, section 14.

#include <algorithm>
#include <array>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <vector>

#include "codec/bit_coder.h"
#include "codec/logistic.h"

namespace pantile::codec {

/// Spreads numbers over all 64 bits when they are multiplied by it: 2^64 by the golden ratio.
inline constexpr std::uint64_t kSpread = 0x9E3779B97F4A7C15U;

/// A weight in 1/8192, held within what sixteen bits take: so narrow that a processor mixes many at
/// once.
using Weight = std::int16_t;

inline constexpr int kWeightBits = 13;
inline constexpr Weight kWeightOne = 1 << kWeightBits;

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
        for (auto& weights : m_mixed) weights.fill(Weight{kWeightOne / kChoosers});
    }

    /// Puts down or reads one decision, and learns from it.
    bool code(BitCoder& coder, bool bit, const Question& question) {
        std::array<Learned*, kContexts> places;
        std::array<Input, kInputs> inputs;
        for (std::size_t i = 0; i < kContexts; ++i) {
            places[i] = &place(i, question.contexts[i]);
            inputs[i] =
                places[i]->seen == 0 ? Input{0} : static_cast<Input>(logitOf(places[i]->yes));
        }
        inputs[kContexts] = kBias;

        std::array<Input, kChoosers> logits;
        for (std::size_t i = 0; i < kChoosers; ++i) {
            logits[i] = mixed(m_weights[i][question.choices[i]], inputs);
        }
        auto& last = m_mixed[question.choices[0]];
        const Probability yes = probabilityOf(mixed(last, logits));
        bit = coder.code(bit, yes);

        adjust<kLastSlowness>(last, logits, bit, yes);
        for (std::size_t i = 0; i < kChoosers; ++i) {
            adjust<kSlowness>(m_weights[i][question.choices[i]], inputs, bit,
                              probabilityOf(logits[i]));
        }
        for (Learned* learned : places) learned->learn(bit);
        return bit;
    }

    /// As they are now: what training takes its start from.
    const StartWeights& weights() const { return m_weights; }

private:
    using Input = std::int16_t;  ///< A Logit.

    static constexpr Input kBias = 256;
    // As shifts: the higher, the less a weight moves for the same miss.
    static constexpr int kSlowness = 17;
    static constexpr int kLastSlowness = 18;

    Learned& place(std::size_t table, std::uint64_t context) {
        const std::uint64_t spread = context * kSpread;
        const auto bits = static_cast<unsigned>(m_tableBits);
        const auto tag = static_cast<std::uint8_t>(spread >> (56U - bits));
        Learned& learned = m_tables[table][static_cast<std::size_t>(spread >> (64U - bits))];
        if (learned.tag != tag) learned = {.tag = tag};
        return learned;
    }

    // At most 16 products below 2^26: no sum runs over.
    template <std::size_t kCount>
    static Input mixed(const std::array<Weight, kCount>& weights,
                       const std::array<Input, kCount>& inputs) {
        static_assert(kCount <= 16);
        std::int32_t sum = 0;
        for (std::size_t i = 0; i < kCount; ++i) sum += std::int32_t{weights[i]} * inputs[i];
        return static_cast<Input>(std::clamp(sum >> kWeightBits, -kLargestLogit, kLargestLogit));
    }

    template <int kShift, std::size_t kCount>
    static void adjust(std::array<Weight, kCount>& weights, const std::array<Input, kCount>& inputs,
                       bool bit, Probability yes) {
        constexpr std::int32_t kHalf = 1 << (kShift - 1);
        const std::int32_t wanted = bit ? std::int32_t{kCertain} : 0;
        const auto missed =
            static_cast<std::int16_t>((wanted - static_cast<std::int32_t>(yes)) >> 1);
        for (std::size_t i = 0; i < kCount; ++i) {
            const std::int32_t moved =
                weights[i] + ((std::int32_t{missed} * inputs[i] + kHalf) >> kShift);
            weights[i] = static_cast<Weight>(std::clamp<std::int32_t>(
                moved, std::numeric_limits<Weight>::min(), std::numeric_limits<Weight>::max()));
        }
    }

    int m_tableBits;
    std::array<std::vector<Learned>, kContexts> m_tables;
    StartWeights m_weights;
    std::vector<std::array<Weight, kChoosers>> m_mixed;
};

}  // namespace pantile::codec
