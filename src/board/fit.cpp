#include "board/fit.h"

#include <algorithm>
#include <map>
#include <tuple>

#include "board/left_out.h"
#include "board/weighing.h"
#include "core/board.h"
#include "core/range_check.h"

namespace pantile::board {
namespace {

using core::Error;
using core::ErrorKind;
using core::Result;

// Together about two seconds on a machine of its day; the last search usually is the longest one.
constexpr std::int64_t kStepsForMusts = 1'000'000;
constexpr std::int64_t kStepsForWorth = 25'000'000;
constexpr std::int64_t kStepsForTies = 25'000'000;

Result<void> checkFigures(std::span<const FitItem> items, const FitLimits& limits) {
    constexpr std::int64_t kMostBytesOrTime = std::int64_t{1} << 62U;
    PANTILE_RETURN_IF_ERROR(
        core::checkRange("the number of slots", limits.slots, 0, core::kMaxBoardSlots));
    PANTILE_RETURN_IF_ERROR(
        core::checkRange("the number of bytes", limits.bytes, 0, kMostBytesOrTime));
    PANTILE_RETURN_IF_ERROR(core::checkRange("the time allowed in ms",
                                             limits.milliseconds.value_or(0), 0, kMostBytesOrTime));
    if (items.size() > kMaxFitItems) {
        return Error{ErrorKind::TooLarge,
                     "a choice among " + std::to_string(items.size()) +
                         " textures is too large; at most " + std::to_string(kMaxFitItems) +
                         " can be weighed at once",
                     "narrow the selection"};
    }
    for (const FitItem& item : items) {
        PANTILE_RETURN_IF_ERROR(
            core::checkRange("a texture's worth", item.worth, 0, kMaxFitFigure));
        PANTILE_RETURN_IF_ERROR(core::checkRange("the number of a texture's variants",
                                                 std::ssize(item.variants), 1, kMaxFitVariants));
        for (const FitVariant& variant : item.variants) {
            PANTILE_RETURN_IF_ERROR(
                core::checkRange("a texture's size in bytes", variant.bytes, 0, kMaxFitFigure));
            PANTILE_RETURN_IF_ERROR(
                core::checkRange("a texture's time in ms", variant.milliseconds, 0, kMaxFitFigure));
        }
    }
    return {};
}

class Chooser {
public:
    Chooser(std::span<const FitItem> items, const FitLimits& limits, const core::Progress& progress)
        : m_items(items), m_limits(limits), m_progress(progress) {}

    Result<FitChoice> choose() {
        std::int64_t steps = kStepsForMusts;
        const std::vector<Candidate> candidates = worthAThought();
        const Weighing weighing(candidates, m_limits, steps, m_progress);
        PANTILE_ASSIGN_OR_RETURN(const Weighed musts, weighing.required());
        PANTILE_RETURN_IF_ERROR(checkMusts(candidates, weighing.figuresOf(musts.chosen)));

        m_progress.tell(0, 3, "weighing the textures");
        steps = kStepsForWorth;
        std::vector<Wide> worth;
        worth.reserve(candidates.size());
        for (const Candidate& candidate : candidates) worth.push_back(candidate.worth);
        PANTILE_ASSIGN_OR_RETURN(const Weighed best, weighing.best(worth, musts.chosen));
        m_progress.tell(1, 3, "settling ties");
        steps = kStepsForTies;
        PANTILE_ASSIGN_OR_RETURN(const Weighed quickest, weighing.quickest(best.chosen));

        FitChoice choice;
        const Figures figures = weighing.figuresOf(quickest.chosen);
        choice.worth = figures.worth;
        choice.bytes = figures.bytes;
        choice.milliseconds = figures.milliseconds;
        choice.provenBest = best.proven && quickest.proven;
        choice.worthBound = static_cast<std::int64_t>(best.bound);
        for (std::size_t c = 0; c < candidates.size(); ++c) {
            if (!quickest.chosen[c]) continue;
            choice.chosen.push_back(
                {candidates[c].item, candidates[c].variantsOf[*quickest.chosen[c]]});
        }
        m_progress.tell(2, 3, "finding reasons");
        PANTILE_ASSIGN_OR_RETURN(choice.leftOut,
                                 explainLeftOut(m_items, m_limits, choice, m_progress));
        m_progress.tell(3, 3, "finding reasons");
        return choice;
    }

private:
    struct BundleSum {
        std::int64_t worth = 0;
        bool required = false;
    };

    std::map<int, BundleSum> bundleSums() const {
        std::map<int, BundleSum> sums;
        for (const FitItem& item : m_items) {
            if (item.bundle == FitItem::kNoBundle) continue;
            sums[item.bundle].worth += item.worth;
            sums[item.bundle].required |= item.must;
        }
        return sums;
    }

    /// What must be in, bundles that are worth something, and of the others those that fit alone,
    /// are worth something, and have fewer better ones than there are slots. By item.
    std::vector<Candidate> worthAThought() const {
        const std::map<int, BundleSum> bundles = bundleSums();
        std::vector<Candidate> kept;
        std::vector<Candidate> others;
        for (std::size_t i = 0; i < m_items.size(); ++i) {
            Candidate candidate = candidateOf(m_items, i);
            const auto bundle = bundles.find(candidate.bundle);
            const bool bundled = bundle != bundles.end();
            candidate.required = bundled ? bundle->second.required : candidate.required;
            if (candidate.required || (bundled && bundle->second.worth > 0))
                kept.push_back(std::move(candidate));
            else if (!bundled && candidate.worth > 0 && fitsAlone(candidate))
                others.push_back(std::move(candidate));
        }
        for (Candidate& candidate : withFewBetter(std::move(others)))
            kept.push_back(std::move(candidate));
        std::sort(kept.begin(), kept.end(),
                  [](const Candidate& a, const Candidate& b) { return a.item < b.item; });
        return kept;
    }

    bool fitsAlone(const Candidate& candidate) const {
        return candidate.leastBytes() <= m_limits.bytes &&
               (!m_limits.milliseconds || candidate.leastMs() <= *m_limits.milliseconds);
    }

    std::vector<Candidate> withFewBetter(std::vector<Candidate> candidates) const {
        // In this order whatever is better than a candidate stands before it.
        const auto rank = [](const Candidate& each) {
            return std::tuple(-each.worth, each.leastMs(), each.leastBytes());
        };
        std::stable_sort(candidates.begin(), candidates.end(),
                         [&](const Candidate& a, const Candidate& b) { return rank(a) < rank(b); });
        std::vector<Candidate> kept;
        for (Candidate& candidate : candidates) {
            int better = 0;
            for (auto k = kept.begin(); k != kept.end() && better < m_limits.slots; ++k) {
                if (isBetter(*k, candidate)) ++better;
            }
            if (better < m_limits.slots) kept.push_back(std::move(candidate));
        }
        return kept;
    }

    Result<void> checkMusts(const std::vector<Candidate>& candidates, const Figures& need) const {
        const auto tooMuch = [&](const std::string& what) -> Result<void> {
            return Error{ErrorKind::DoesNotFit,
                         whoMustBeIn(candidates) + " (" + mustNames(candidates) + ") need " + what,
                         "let go of some of them, or choose a larger board"};
        };
        if (need.count > m_limits.slots) {
            return tooMuch(std::to_string(need.count) + " slots, and there " +
                           (m_limits.slots == 1 ? "is " : "are ") + std::to_string(m_limits.slots));
        }
        if (need.bytes > m_limits.bytes) {
            return tooMuch(std::to_string(need.bytes) + " bytes, and there is room for " +
                           std::to_string(m_limits.bytes));
        }
        if (m_limits.milliseconds && need.milliseconds > *m_limits.milliseconds) {
            return tooMuch(std::to_string((need.milliseconds + 999) / 1000) +
                           " s of drawing, and " + std::to_string(*m_limits.milliseconds / 1000) +
                           " s are allowed");
        }
        return {};
    }

    std::string whoMustBeIn(const std::vector<Candidate>& candidates) const {
        const auto required = std::count_if(candidates.begin(), candidates.end(),
                                            [](const Candidate& each) { return each.required; });
        return required == std::ssize(m_items) && required > 1
                   ? "all " + std::to_string(required) + " textures"
                   : "the textures that must be in";
    }

    std::string mustNames(const std::vector<Candidate>& candidates) const {
        constexpr int kMostNamed = 12;
        std::string names;
        int named = 0;
        for (const Candidate& candidate : candidates) {
            if (!candidate.required) continue;
            if (named == kMostNamed) return names + ", …";
            names += (named++ == 0 ? "" : ", ") + m_items[candidate.item].name;
        }
        return names;
    }

    std::span<const FitItem> m_items;
    FitLimits m_limits;
    const core::Progress& m_progress;
};

}  // namespace

Result<FitChoice> chooseBest(std::span<const FitItem> items, const FitLimits& limits,
                             const core::Progress& progress) {
    PANTILE_RETURN_IF_ERROR(checkFigures(items, limits));
    return Chooser(items, limits, progress).choose();
}

}  // namespace pantile::board
