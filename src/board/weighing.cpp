#include "board/weighing.h"

#include <algorithm>
#include <map>
#include <numeric>
#include <tuple>

namespace pantile::board {

using core::Error;
using core::ErrorKind;
using core::Result;

/// A SetProblem, and which variant each of its ways is.
struct WeighedProblem {
    SetProblem set;
    std::vector<std::size_t> variantOf;  ///< By way.
};

namespace {

enum class Variants { Smallest, All };

bool isWithin(const FitVariant& a, const FitVariant& b) {
    return a.bytes <= b.bytes && a.milliseconds <= b.milliseconds;
}

/// Turns candidates and limits into a WeighedProblem.
class Builder {
public:
    Builder(std::span<const Candidate> candidates, Variants variants)
        : m_candidates(candidates), m_variants(variants) {
        SetProblem& set = m_problem.set;
        set.firstWay.push_back(0);
        for (const Candidate& candidate : candidates) {
            const std::size_t count = candidate.variants.size();
            for (std::size_t v = variants == Variants::All ? 0 : count - 1; v < count; ++v)
                m_problem.variantOf.push_back(v);
            set.firstWay.push_back(static_cast<std::uint32_t>(m_problem.variantOf.size()));
        }
        addBundles();
        set.isBetter = [candidates](std::uint32_t a, std::uint32_t b) {
            const auto isFree = [&](const Candidate& each) {
                return !each.required && each.bundle == FitItem::kNoBundle;
            };
            return isFree(candidates[a]) && isFree(candidates[b]) &&
                   isBetter(candidates[a], candidates[b]);
        };
    }

    /// A figure of each way.
    template <typename Number, typename Figure>
    std::vector<Number> ways(const Figure& figure) const {
        std::vector<Number> values;
        for (std::size_t c = 0; c < m_candidates.size(); ++c) {
            for (std::size_t way = m_problem.set.firstWay[c]; way < m_problem.set.firstWay[c + 1];
                 ++way) {
                values.push_back(figure(m_candidates[c], variant(c, way)));
            }
        }
        return values;
    }

    /// Slots, bytes and time, as far as all candidates together would break them.
    void limitTo(const FitLimits& limits) {
        using V = FitVariant;
        limit(ways<std::int64_t>([](const Candidate&, const V&) { return 1; }), limits.slots);
        limit(ways<std::int64_t>([](const Candidate&, const V& v) { return v.bytes; }),
              limits.bytes);
        if (!limits.milliseconds) return;
        limit(ways<std::int64_t>([](const Candidate&, const V& v) { return v.milliseconds; }),
              *limits.milliseconds);
    }

    /// Time before bytes: one millisecond outweighs all bytes.
    void preferQuick() {
        Wide unit = 1;
        for (const Candidate& candidate : m_candidates) unit += candidate.variants.front().bytes;
        m_problem.set.value = ways<Wide>([&](const Candidate&, const FitVariant& v) {
            return -(v.milliseconds * unit + v.bytes);
        });
    }

    void preferSmall() {
        m_problem.set.value =
            ways<Wide>([](const Candidate&, const FitVariant& v) { return Wide{-v.bytes}; });
    }

    void startFrom(const Assignment& start) {
        for (std::size_t c = 0; c < start.size(); ++c) {
            const std::uint32_t first = m_problem.set.firstWay[c];
            const std::size_t way =
                m_variants == Variants::All ? first + start[c].value_or(0) : first;
            m_problem.set.start.push_back(start[c] ? static_cast<std::int32_t>(way) : kOut);
        }
    }

    WeighedProblem& problem() { return m_problem; }

private:
    const FitVariant& variant(std::size_t candidate, std::size_t way) const {
        return m_candidates[candidate].variants[m_problem.variantOf[way]];
    }

    void limit(std::vector<std::int64_t> use, std::int64_t room) {
        const SetProblem& set = m_problem.set;
        std::int64_t most = 0;
        for (std::size_t c = 0; c < m_candidates.size(); ++c) {
            const std::span<const std::int64_t> own = ofPiece(set, use, c);
            most += *std::max_element(own.begin(), own.end());
        }
        if (most > room) m_problem.set.limits.push_back({std::move(use), room});
    }

    void addBundles() {
        std::map<int, std::size_t> placeOf;
        std::vector<Bundle>& bundles = m_problem.set.bundles;
        for (std::size_t c = 0; c < m_candidates.size(); ++c) {
            const Candidate& candidate = m_candidates[c];
            std::size_t place = bundles.size();
            if (candidate.bundle != FitItem::kNoBundle)
                place = placeOf.try_emplace(candidate.bundle, place).first->second;
            if (place == bundles.size()) bundles.emplace_back();
            bundles[place].pieces.push_back(static_cast<std::uint32_t>(c));
            bundles[place].required = bundles[place].required || candidate.required;
        }
    }

    std::span<const Candidate> m_candidates;
    Variants m_variants;
    WeighedProblem m_problem;
};

Assignment smallestOfRequired(std::span<const Candidate> candidates) {
    Assignment chosen(candidates.size());
    for (std::size_t c = 0; c < candidates.size(); ++c) {
        if (candidates[c].required) chosen[c] = candidates[c].variants.size() - 1;
    }
    return chosen;
}

}  // namespace

Candidate candidateOf(std::span<const FitItem> items, std::size_t item) {
    const std::vector<FitVariant>& variants = items[item].variants;
    std::vector<std::size_t> order(variants.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return std::tuple(variants[a].milliseconds, variants[a].bytes) <
               std::tuple(variants[b].milliseconds, variants[b].bytes);
    });
    Candidate candidate{item, items[item].worth, {}, {}, items[item].must, items[item].bundle};
    for (const std::size_t v : order) {
        // Those before take no more time.
        if (!candidate.variants.empty() && variants[v].bytes >= candidate.leastBytes()) continue;
        candidate.variants.push_back(variants[v]);
        candidate.variantsOf.push_back(v);
    }
    return candidate;
}

bool isBetter(const Candidate& a, const Candidate& b) {
    if (a.worth < b.worth) return false;
    const bool goesFirst = a.worth > b.worth || a.item < b.item;
    return std::all_of(b.variants.begin(), b.variants.end(), [&](const FitVariant& of) {
        return std::any_of(a.variants.begin(), a.variants.end(), [&](const FitVariant& other) {
            return isWithin(other, of) && (goesFirst || !(other == of));
        });
    });
}

Weighing::Weighing(std::span<const Candidate> candidates, const FitLimits& limits,
                   std::int64_t& steps, const core::Progress& progress)
    : m_candidates(candidates), m_limits(limits), m_steps(steps), m_progress(progress) {}

Result<Weighed> Weighing::required() const {
    std::vector<Candidate> musts;
    std::vector<std::size_t> placeOf;
    for (std::size_t c = 0; c < m_candidates.size(); ++c) {
        if (!m_candidates[c].required) continue;
        musts.push_back(m_candidates[c]);
        placeOf.push_back(c);
    }
    Weighed all{smallestOfRequired(m_candidates), true, 0};
    const Figures smallest = figuresOf(all.chosen);
    const bool quickEnough =
        smallest.milliseconds <= m_limits.milliseconds.value_or(smallest.milliseconds);
    if (quickEnough || smallest.bytes > m_limits.bytes) return all;

    Builder builder(musts, Variants::All);
    FitLimits bytesOnly{static_cast<int>(musts.size()), m_limits.bytes, {}};
    builder.limitTo(bytesOnly);
    builder.preferQuick();
    builder.startFrom(smallestOfRequired(musts));
    PANTILE_ASSIGN_OR_RETURN(const Weighed quickest, ask(builder.problem()));
    for (std::size_t m = 0; m < musts.size(); ++m) all.chosen[placeOf[m]] = quickest.chosen[m];
    all.proven = quickest.proven;
    return all;
}

Result<Weighed> Weighing::best(const std::vector<Wide>& value, const Assignment& start) const {
    // Where time does not count, the smallest variants do.
    Builder builder(m_candidates, m_limits.milliseconds ? Variants::All : Variants::Smallest);
    SetProblem& set = builder.problem().set;
    for (std::size_t c = 0; c < m_candidates.size(); ++c)
        set.value.insert(set.value.end(), set.firstWay[c + 1] - set.firstWay[c], value[c]);
    builder.limitTo(m_limits);
    builder.startFrom(start);
    return ask(builder.problem());
}

Result<Weighed> Weighing::quickest(const Assignment& start) const {
    Builder builder(m_candidates, Variants::All);
    builder.preferQuick();
    builder.limitTo(m_limits);
    SetProblem& set = builder.problem().set;
    set.limits.push_back(
        {builder.ways<std::int64_t>(
             [](const Candidate& candidate, const FitVariant&) { return -candidate.worth; }),
         -figuresOf(start).worth});
    set.ties = Ties::Earliest;
    builder.startFrom(start);
    return ask(builder.problem());
}

Result<Weighed> Weighing::smallest(const Assignment& start) const {
    Builder builder(m_candidates, Variants::All);
    builder.preferSmall();
    builder.limitTo(m_limits);
    builder.startFrom(start);
    return ask(builder.problem());
}

Figures Weighing::figuresOf(const Assignment& chosen) const {
    Figures figures;
    for (std::size_t c = 0; c < chosen.size(); ++c) {
        if (!chosen[c]) continue;
        const FitVariant& variant = m_candidates[c].variants[*chosen[c]];
        ++figures.count;
        figures.worth += m_candidates[c].worth;
        figures.bytes += variant.bytes;
        figures.milliseconds += variant.milliseconds;
    }
    return figures;
}

Result<Weighed> Weighing::ask(const WeighedProblem& problem) const {
    const SetAnswer answer = searchBestSet(problem.set, m_steps, m_progress);
    if (answer.cancelled) {
        return Error{ErrorKind::Cancelled, "choosing the textures was stopped", ""};
    }
    Weighed weighed{{}, answer.proven, answer.bound};
    for (const std::int32_t way : answer.chosen) {
        weighed.chosen.push_back(
            way == kOut ? std::nullopt
                        : std::optional(problem.variantOf[static_cast<std::size_t>(way)]));
    }
    return weighed;
}

}  // namespace pantile::board
