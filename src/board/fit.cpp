#include "board/fit.h"

#include <algorithm>
#include <functional>
#include <numeric>

#include "board/left_out.h"
#include "board/set_search.h"
#include "core/board.h"
#include "core/range_check.h"

namespace pantile::board {
namespace {

using core::Error;
using core::ErrorKind;
using core::Result;

// Together about two seconds on a machine of its day; the second search usually is the longer one.
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
        PANTILE_RETURN_IF_ERROR(
            core::checkRange("a texture's size in bytes", item.bytes, 0, kMaxFitFigure));
        PANTILE_RETURN_IF_ERROR(
            core::checkRange("a texture's time in ms", item.milliseconds, 0, kMaxFitFigure));
    }
    return {};
}

FitChoice sumOf(std::span<const FitItem> items, std::vector<std::size_t> chosen) {
    FitChoice choice;
    for (const std::size_t i : chosen) {
        choice.worth += items[i].worth;
        choice.bytes += items[i].bytes;
        choice.milliseconds += items[i].milliseconds;
    }
    choice.chosen = std::move(chosen);
    return choice;
}

Error mustsDoNotFit(const std::vector<std::size_t>& musts, const std::string& what) {
    constexpr std::size_t kMostNamed = 12;
    std::string names;
    for (std::size_t i = 0; i < musts.size() && i < kMostNamed; ++i) {
        names += (i == 0 ? "" : ", ") + std::to_string(musts[i] + 1);
    }
    if (musts.size() > kMostNamed) names += ", …";
    return Error{
        ErrorKind::DoesNotFit,
        "the textures that must be in (number " + names + " of the selection) need " + what,
        "let go of some of them, or choose a larger board"};
}

/// What the musts leave. Errors: DoesNotFit.
Result<FitLimits> limitsAfter(const FitChoice& musts, const FitLimits& limits) {
    const auto count = static_cast<std::int64_t>(musts.chosen.size());
    if (count > limits.slots) {
        return mustsDoNotFit(musts.chosen, std::to_string(count) + " slots, and there are " +
                                               std::to_string(limits.slots));
    }
    if (musts.bytes > limits.bytes) {
        return mustsDoNotFit(musts.chosen, std::to_string(musts.bytes) +
                                               " bytes, and the board has " +
                                               std::to_string(limits.bytes));
    }
    if (limits.milliseconds && musts.milliseconds > *limits.milliseconds) {
        return mustsDoNotFit(musts.chosen,
                             std::to_string(musts.milliseconds) + " ms to draw, and " +
                                 std::to_string(*limits.milliseconds) + " ms are allowed");
    }
    FitLimits left = limits;
    left.slots -= static_cast<int>(count);
    left.bytes -= musts.bytes;
    if (left.milliseconds) *left.milliseconds -= musts.milliseconds;
    return left;
}

/// No worse in any figure, and before it in the order of ties: the best set never holds `b` alone.
bool isBetter(const FitItem& a, std::size_t indexA, const FitItem& b, std::size_t indexB) {
    if (a.worth < b.worth || a.milliseconds > b.milliseconds || a.bytes > b.bytes) return false;
    const bool equal = a.worth == b.worth && a.milliseconds == b.milliseconds && a.bytes == b.bytes;
    return !equal || indexA < indexB;
}

/// The items worth a thought: they fit alone, are worth something, and have fewer better ones than
/// there are slots. Ascending.
std::vector<std::size_t> candidates(std::span<const FitItem> items, const FitLimits& left) {
    std::vector<std::size_t> order;
    for (std::size_t i = 0; i < items.size(); ++i) {
        const FitItem& item = items[i];
        if (item.must || item.worth == 0 || item.bytes > left.bytes) continue;
        if (left.milliseconds && item.milliseconds > *left.milliseconds) continue;
        order.push_back(i);
    }
    // In this order whatever is better than an item stands before it.
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        if (items[a].worth != items[b].worth) return items[a].worth > items[b].worth;
        if (items[a].milliseconds != items[b].milliseconds) {
            return items[a].milliseconds < items[b].milliseconds;
        }
        return items[a].bytes < items[b].bytes;
    });
    std::vector<std::size_t> kept;
    for (const std::size_t i : order) {
        int better = 0;
        for (auto k = kept.begin(); k != kept.end() && better < left.slots; ++k) {
            if (isBetter(items[*k], *k, items[i], i)) ++better;
        }
        if (better < left.slots) kept.push_back(i);
    }
    std::sort(kept.begin(), kept.end());
    return kept;
}

/// The two searches over the candidates: first for worth, then, at that worth, for time, bytes and
/// order.
class Chooser {
public:
    Chooser(std::span<const FitItem> items, std::vector<std::size_t> candidates,
            const FitLimits& left, const core::Progress& progress)
        : m_items(items), m_candidates(std::move(candidates)), m_left(left), m_progress(progress) {}

    /// Errors: Cancelled.
    Result<std::vector<std::size_t>> choose() {
        m_progress.tell(0, 2, "weighing the textures");
        SetProblem problem = withRoomLimits();
        for (const std::size_t i : m_candidates) problem.value.push_back(m_items[i].worth);
        problem.start.assign(m_candidates.size(), 0);
        PANTILE_RETURN_IF_ERROR(search(problem, kStepsForWorth));

        m_progress.tell(1, 2, "settling ties");
        problem = withRoomLimits();
        problem.ties = Ties::Earliest;
        problem.value = timeAndBytes();
        Limit worth{figures([](const FitItem& item) { return -item.worth; }), 0};
        for (std::size_t c = 0; c < m_candidates.size(); ++c) {
            if (m_chosen[c] != 0) worth.room += worth.use[c];
        }
        problem.limits.push_back(std::move(worth));
        problem.start = m_chosen;
        PANTILE_RETURN_IF_ERROR(search(problem, kStepsForTies));
        m_progress.tell(2, 2, "settling ties");

        std::vector<std::size_t> chosen;
        for (std::size_t c = 0; c < m_candidates.size(); ++c) {
            if (m_chosen[c] != 0) chosen.push_back(m_candidates[c]);
        }
        return chosen;
    }

    bool proven() const { return m_proven; }

private:
    Result<void> search(const SetProblem& problem, std::int64_t steps) {
        SetAnswer answer = searchBestSet(problem, steps, m_progress);
        if (answer.cancelled) {
            return Error{ErrorKind::Cancelled, "choosing the textures was stopped", ""};
        }
        m_proven = m_proven && answer.proven;
        m_chosen = std::move(answer.chosen);
        return {};
    }

    std::vector<std::int64_t> figures(
        const std::function<std::int64_t(const FitItem&)>& figure) const {
        std::vector<std::int64_t> values;
        for (const std::size_t i : m_candidates) values.push_back(figure(m_items[i]));
        return values;
    }

    /// Slots, bytes and time, as far as all candidates together would break them.
    SetProblem withRoomLimits() const {
        SetProblem problem;
        const auto add = [&](std::vector<std::int64_t> use, std::int64_t room) {
            const std::int64_t total = std::accumulate(use.begin(), use.end(), std::int64_t{0});
            if (total > room) problem.limits.push_back({std::move(use), room});
        };
        add(figures([](const FitItem&) { return std::int64_t{1}; }), m_left.slots);
        add(figures([](const FitItem& item) { return item.bytes; }), m_left.bytes);
        if (m_left.milliseconds) {
            add(figures([](const FitItem& item) { return item.milliseconds; }),
                *m_left.milliseconds);
        }
        problem.isBetter = [this](std::uint32_t a, std::uint32_t b) {
            const std::size_t itemA = m_candidates[a];
            const std::size_t itemB = m_candidates[b];
            return isBetter(m_items[itemA], itemA, m_items[itemB], itemB);
        };
        return problem;
    }

    /// To be least: the time, and among equal times the bytes. One millisecond outweighs all bytes.
    std::vector<Wide> timeAndBytes() const {
        Wide unit = 1;
        for (const std::size_t i : m_candidates) unit += m_items[i].bytes;
        std::vector<Wide> values;
        for (const std::size_t i : m_candidates) {
            values.push_back(-(m_items[i].milliseconds * unit + m_items[i].bytes));
        }
        return values;
    }

    std::span<const FitItem> m_items;
    std::vector<std::size_t> m_candidates;
    FitLimits m_left;
    const core::Progress& m_progress;
    Selection m_chosen;
    bool m_proven = true;
};

}  // namespace

Result<FitChoice> chooseBest(std::span<const FitItem> items, const FitLimits& limits,
                             const core::Progress& progress) {
    PANTILE_RETURN_IF_ERROR(checkFigures(items, limits));
    std::vector<std::size_t> chosen;
    for (std::size_t i = 0; i < items.size(); ++i) {
        if (items[i].must) chosen.push_back(i);
    }
    PANTILE_ASSIGN_OR_RETURN(const FitLimits left, limitsAfter(sumOf(items, chosen), limits));

    Chooser chooser(items, candidates(items, left), left, progress);
    PANTILE_ASSIGN_OR_RETURN(const std::vector<std::size_t> others, chooser.choose());
    chosen.insert(chosen.end(), others.begin(), others.end());
    std::sort(chosen.begin(), chosen.end());
    FitChoice choice = sumOf(items, std::move(chosen));
    choice.provenBest = chooser.proven();
    choice.leftOut = explainLeftOut(items, limits, choice);
    return choice;
}

}  // namespace pantile::board
