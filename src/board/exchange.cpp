#include "board/exchange.h"

#include <algorithm>
#include <map>

namespace pantile::board {
namespace {

using core::Result;

std::vector<Candidate> withUnit(const Standing& standing, const Unit& unit) {
    std::vector<Candidate> all = standing.chosen();
    for (Candidate candidate : unit) {
        candidate.required = true;
        all.push_back(std::move(candidate));
    }
    return all;
}

bool keeps(const Figures& figures, const FitLimits& limits) {
    return figures.count <= limits.slots && figures.bytes <= limits.bytes &&
           (!limits.milliseconds || figures.milliseconds <= *limits.milliseconds);
}

void add(Figures& figures, const FitVariant& variant) {
    ++figures.count;
    figures.bytes += variant.bytes;
    figures.milliseconds += variant.milliseconds;
}

/// Whether the unit fits beside `others` in its quickest or smallest variants, or one alone in any.
bool fitsBeside(const Figures& others, const Unit& unit, const FitLimits& limits) {
    if (unit.size() == 1) {
        const auto& variants = unit.front().variants;
        return std::any_of(variants.begin(), variants.end(), [&](const FitVariant& variant) {
            Figures with = others;
            add(with, variant);
            return keeps(with, limits);
        });
    }
    Figures quickest = others;
    Figures smallest = others;
    for (const Candidate& member : unit) {
        add(quickest, member.variants.front());
        add(smallest, member.variants.back());
    }
    return keeps(quickest, limits) || keeps(smallest, limits);
}

/// What remains if those go that `kept` leaves out, the others staying as they are.
Figures remaining(const Standing& standing, const Assignment& kept) {
    Figures figures;
    for (std::size_t c = 0; c < standing.chosen().size(); ++c) {
        if (kept[c]) add(figures, standing.chosen()[c].variants[*standing.variants()[c]]);
    }
    return figures;
}

Exchange exchangeTo(const Standing& standing, const Unit& unit, const Weighed& kept) {
    Exchange exchange;
    for (std::size_t c = 0; c < standing.chosen().size(); ++c) {
        if (kept.chosen[c]) continue;
        exchange.takeOut.push_back(standing.chosen()[c].item);
        exchange.worth += standing.chosen()[c].worth;
    }
    exchange.otherVariants = !fitsBeside(remaining(standing, kept.chosen), unit, standing.limits());
    exchange.provenLeast = kept.proven;
    return exchange;
}

/// Bytes in the smallest variants that take no more than `milliseconds`, where the smallest of all
/// take more.
Result<std::int64_t> bytesWithin(std::int64_t milliseconds, std::vector<Candidate> all,
                                 std::int64_t& steps, const core::Progress& progress) {
    for (Candidate& candidate : all) candidate.required = true;
    const FitLimits room{static_cast<int>(all.size()), kMaxFitFigure * std::ssize(all),
                         milliseconds};
    const Weighing weighing(all, room, steps, progress);
    const Assignment quickest(all.size(), std::size_t{0});
    PANTILE_ASSIGN_OR_RETURN(const Weighed smallest, weighing.smallest(quickest));
    return weighing.figuresOf(smallest.chosen).bytes;
}

}  // namespace

Standing::Standing(std::vector<Candidate> chosen, Assignment variants, const FitLimits& limits)
    : m_chosen(std::move(chosen)), m_variants(std::move(variants)), m_limits(limits) {
    struct Bundled {
        std::int64_t worth = 0;
        bool required = false;
    };

    std::map<int, Bundled> bundles;
    for (std::size_t c = 0; c < m_chosen.size(); ++c) {
        const Candidate& candidate = m_chosen[c];
        add(m_asItIs, candidate.variants[*m_variants[c]]);
        m_leastBytes += candidate.leastBytes();
        m_leastMs += candidate.leastMs();
        if (candidate.bundle == FitItem::kNoBundle) continue;
        bundles[candidate.bundle].worth += candidate.worth;
        bundles[candidate.bundle].required |= candidate.required;
    }
    const auto mayGo = [&](std::int64_t worth) {
        m_leastWorth = std::min(m_leastWorth.value_or(worth), worth);
    };
    for (Candidate& candidate : m_chosen) {
        if (candidate.bundle != FitItem::kNoBundle)
            candidate.required = bundles[candidate.bundle].required;
        else if (!candidate.required)
            mayGo(candidate.worth);
    }
    for (const auto& [number, bundle] : bundles) {
        if (!bundle.required) mayGo(bundle.worth);
    }
}

std::optional<Exchange> singleExchange(const Standing& standing, const Unit& unit) {
    std::optional<std::size_t> best;
    std::int64_t slowest = -1;
    for (std::size_t c = 0; c < standing.chosen().size(); ++c) {
        const Candidate& candidate = standing.chosen()[c];
        if (candidate.required || candidate.bundle != FitItem::kNoBundle) continue;
        const FitVariant& now = candidate.variants[*standing.variants()[c]];
        if (candidate.worth != *standing.leastWorth() || now.milliseconds <= slowest) continue;
        Figures others = standing.asItIs();
        --others.count;
        others.bytes -= now.bytes;
        others.milliseconds -= now.milliseconds;
        if (!fitsBeside(others, unit, standing.limits())) continue;
        best = c;
        slowest = now.milliseconds;
    }
    if (!best) return std::nullopt;
    return Exchange{{standing.chosen()[*best].item}, *standing.leastWorth(), false, true};
}

Result<std::optional<Exchange>> cheapestExchange(const Standing& standing, const Unit& unit,
                                                 std::int64_t& steps,
                                                 const core::Progress& progress) {
    if (auto single = singleExchange(standing, unit)) return single;
    const std::vector<Candidate> all = withUnit(standing, unit);
    const Weighing weighing(all, standing.limits(), steps, progress);
    PANTILE_ASSIGN_OR_RETURN(const Weighed musts, weighing.required());
    if (!keeps(weighing.figuresOf(musts.chosen), standing.limits()))
        return std::optional<Exchange>();
    // A texture more that stays counts only among equal worths.
    const Wide one = static_cast<Wide>(all.size()) + 1;
    std::vector<Wide> value;
    value.reserve(all.size());
    for (const Candidate& candidate : all) value.push_back(candidate.worth * one + 1);
    PANTILE_ASSIGN_OR_RETURN(const Weighed kept, weighing.best(value, musts.chosen));
    return std::optional(exchangeTo(standing, unit, kept));
}

Result<Shortage> shortageFor(const Standing& standing, const Unit& unit, std::int64_t& steps,
                             const core::Progress& progress) {
    const FitLimits& limits = standing.limits();
    Figures smallest;
    Figures quickest;
    for (const Candidate& member : unit) {
        add(smallest, member.variants.back());
        add(quickest, member.variants.front());
    }
    Shortage shortage;
    const std::int64_t count = standing.asItIs().count + smallest.count;
    shortage.slots = static_cast<int>(std::max<std::int64_t>(count - limits.slots, 0));
    std::int64_t bytes = standing.leastBytes() + smallest.bytes;
    if (limits.milliseconds) {
        const std::int64_t allowed =
            std::max(standing.leastMs() + quickest.milliseconds, *limits.milliseconds);
        shortage.milliseconds = allowed - *limits.milliseconds;
        std::vector<Candidate> all = withUnit(standing, unit);
        std::int64_t asSmallest = 0;
        for (const Candidate& each : all) asSmallest += each.variants.back().milliseconds;
        if (asSmallest > allowed) {
            PANTILE_ASSIGN_OR_RETURN(bytes, bytesWithin(allowed, std::move(all), steps, progress));
        }
    }
    shortage.bytes = std::max<std::int64_t>(bytes - limits.bytes, 0);
    return shortage;
}

}  // namespace pantile::board
