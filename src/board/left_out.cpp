#include "board/left_out.h"

#include <algorithm>
#include <map>
#include <optional>
#include <string_view>

#include "board/exchange.h"
#include "board/weighing.h"

namespace pantile::board {
namespace {

using core::Result;

constexpr std::int64_t kStepsForExchanges = 3'000'000;

// Each takes some thousandths of a second.
constexpr int kMostSearches = 300;

std::string bytesText(std::int64_t bytes) {
    return std::to_string(bytes) + (bytes == 1 ? " byte" : " bytes");
}

/// Whole seconds, rounded up: a shortage is never shown as less than it is.
std::string secondsText(std::int64_t milliseconds) {
    return std::to_string((milliseconds + 999) / 1000) + " s";
}

/// "a, b and c".
std::string listed(const std::vector<std::string>& words) {
    std::string text;
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (i > 0) text += i + 1 == words.size() ? " and " : ", ";
        text += words[i];
    }
    return text;
}

std::vector<std::string> shortageWords(const Shortage& shortage) {
    std::vector<std::string> words;
    if (shortage.slots > 0) {
        words.push_back(std::to_string(shortage.slots) +
                        (shortage.slots == 1 ? " slot" : " slots"));
    }
    if (shortage.bytes > 0) words.push_back(bytesText(shortage.bytes));
    if (shortage.milliseconds > 0) words.push_back(secondsText(shortage.milliseconds));
    return words;
}

class Explainer {
public:
    Explainer(std::span<const FitItem> items, const Standing& standing,
              const core::Progress& progress)
        : m_items(items), m_standing(standing), m_progress(progress) {}

    Result<std::vector<LeftOut>> explain(const std::vector<std::size_t>& leftOut) {
        std::map<int, Unit> bundles;
        for (const std::size_t item : leftOut) {
            if (m_items[item].bundle != FitItem::kNoBundle)
                bundles[m_items[item].bundle].push_back(candidateOf(m_items, item));
        }
        std::map<int, LeftOut> ofBundle;
        for (const auto& [bundle, unit] : bundles) {
            PANTILE_ASSIGN_OR_RETURN(ofBundle[bundle], explainUnit(unit));
        }
        std::vector<LeftOut> explained;
        for (const std::size_t item : leftOut) {
            const int bundle = m_items[item].bundle;
            LeftOut left;
            if (bundle == FitItem::kNoBundle) {
                PANTILE_ASSIGN_OR_RETURN(left, explainUnit({candidateOf(m_items, item)}));
            } else {
                left = ofBundle[bundle];
            }
            left.item = item;
            explained.push_back(std::move(left));
        }
        return explained;
    }

private:
    Result<LeftOut> explainUnit(const Unit& unit) {
        LeftOut left;
        left.reason = reasonAlone(unit);
        const bool fitsAlone = left.reason.empty();
        PANTILE_ASSIGN_OR_RETURN(left.shortage,
                                 shortageFor(m_standing, unit, m_stepsLeft, m_progress));
        bool sought = false;
        if (fitsAlone && left.shortage.any()) {
            PANTILE_ASSIGN_OR_RETURN(sought, seekExchange(unit, left.exchange));
        }
        if (fitsAlone) left.reason = reasonBeside(unit, left, sought);
        if (unit.size() > 1) {
            left.reason = "kept together with " + std::to_string(unit.size() - 1) +
                          (unit.size() == 2 ? " other, " : " others, ") + left.reason;
        }
        return left;
    }

    /// False if there are no searches left for it.
    Result<bool> seekExchange(const Unit& unit, std::optional<Exchange>& exchange) {
        exchange = singleExchange(m_standing, unit);
        if (exchange) return true;
        if (m_searches == kMostSearches || m_stepsLeft <= 0) return false;
        ++m_searches;
        PANTILE_ASSIGN_OR_RETURN(exchange,
                                 cheapestExchange(m_standing, unit, m_stepsLeft, m_progress));
        return true;
    }

    /// Why not even an empty board would do; empty if one would.
    std::string reasonAlone(const Unit& unit) const {
        const FitLimits& limits = m_standing.limits();
        std::int64_t bytes = 0;
        std::int64_t milliseconds = 0;
        for (const Candidate& member : unit) {
            bytes += member.leastBytes();
            milliseconds += member.leastMs();
        }
        if (bytes > limits.bytes) {
            return "alone larger than the board's bytes: it needs " + bytesText(bytes) +
                   ", and the board has " + bytesText(limits.bytes);
        }
        if (limits.milliseconds && milliseconds > *limits.milliseconds) {
            return "alone takes longer than the time allowed: " + secondsText(milliseconds) +
                   " of " + secondsText(*limits.milliseconds);
        }
        if (unit.size() > static_cast<std::size_t>(limits.slots)) {
            return "alone more than the slots: " + std::to_string(unit.size()) + " of " +
                   std::to_string(limits.slots);
        }
        return "";
    }

    std::string reasonBeside(const Unit& unit, const LeftOut& left, bool sought) const {
        const std::int64_t worth = worthOf(unit);
        if (worth == 0) return "worth nothing, so it would only take room";
        // Only a search that ran out of steps leaves a texture out that still fits.
        if (!left.shortage.any()) return std::string(kNotTried);
        if (left.shortage.slots == 0)
            return "needs " + listed(shortageWords(left.shortage)) + " more than the load has left";
        if (!sought) return reasonByLeastWorth(worth);
        if (!left.exchange) {
            return m_standing.leastWorth() ? "does not fit beside the textures that must be in"
                                           : "the slots are full of textures that must be in";
        }
        if (worth > left.exchange->worth) return std::string(kNotTried);
        return (worth < left.exchange->worth ? "worth less than " : "worth no more than ") +
               std::string(left.exchange->takeOut.size() == 1
                               ? "what fills the slots"
                               : "the textures that would have to go");
    }

    std::string reasonByLeastWorth(std::int64_t worth) const {
        return worth < m_standing.leastWorth().value_or(0)
                   ? "worth less than what fills the slots"
                   : "would push out textures that are worth no less together";
    }

    static std::int64_t worthOf(const Unit& unit) {
        std::int64_t worth = 0;
        for (const Candidate& member : unit) worth += member.worth;
        return worth;
    }

    static constexpr std::string_view kNotTried = "not tried before the search ran out of steps";

    std::span<const FitItem> m_items;
    const Standing& m_standing;
    const core::Progress& m_progress;
    std::int64_t m_stepsLeft = kStepsForExchanges;
    int m_searches = 0;
};

Standing standingOf(std::span<const FitItem> items, const FitLimits& limits,
                    const FitChoice& choice) {
    std::vector<Candidate> chosen;
    Assignment variants;
    for (const FitPick& pick : choice.chosen) {
        Candidate candidate = candidateOf(items, pick.item);
        const auto place =
            std::find(candidate.variantsOf.begin(), candidate.variantsOf.end(), pick.variant);
        variants.emplace_back(place - candidate.variantsOf.begin());
        chosen.push_back(std::move(candidate));
    }
    return {std::move(chosen), std::move(variants), limits};
}

std::string exchangeWords(std::span<const FitItem> items, const Exchange& exchange) {
    constexpr std::size_t kMostNamed = 5;
    std::vector<std::string> names;
    for (const std::size_t item : exchange.takeOut) {
        if (names.size() == kMostNamed && exchange.takeOut.size() > kMostNamed + 1) {
            names.push_back(std::to_string(exchange.takeOut.size() - kMostNamed) + " others");
            break;
        }
        names.push_back(items[item].name + " (worth " + std::to_string(items[item].worth) + ")");
    }
    return std::string(exchange.provenLeast ? "" : "for example ") + "in place of " +
           listed(names) + (exchange.otherVariants ? ", if others are drawn in fewer bytes" : "");
}

}  // namespace

Result<std::vector<LeftOut>> explainLeftOut(std::span<const FitItem> items, const FitLimits& limits,
                                            const FitChoice& choice,
                                            const core::Progress& progress) {
    std::vector<std::size_t> leftOut;
    auto next = choice.chosen.begin();
    for (std::size_t i = 0; i < items.size(); ++i) {
        if (next != choice.chosen.end() && next->item == i) {
            ++next;
        } else {
            leftOut.push_back(i);
        }
    }
    const Standing standing = standingOf(items, limits, choice);
    return Explainer(items, standing, progress).explain(leftOut);
}

std::string changeText(std::span<const FitItem> items, const LeftOut& left) {
    std::string ways;
    if (left.exchange) ways = exchangeWords(items, *left.exchange);
    if (left.shortage.any()) {
        ways += (ways.empty() ? "with " : ", or with ") + listed(shortageWords(left.shortage)) +
                " more";
    }
    return ways.empty() ? "" : "It fits " + ways + ".";
}

}  // namespace pantile::board
