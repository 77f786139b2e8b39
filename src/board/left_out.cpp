#include "board/left_out.h"

#include <algorithm>
#include <optional>

namespace pantile::board {
namespace {

std::string bytesText(std::int64_t bytes) {
    return std::to_string(bytes) + (bytes == 1 ? " byte" : " bytes");
}

/// Whole seconds, rounded up: a shortage is never shown as less than it is.
std::string secondsText(std::int64_t milliseconds) {
    return std::to_string((milliseconds + 999) / 1000) + " s";
}

class Explainer {
public:
    Explainer(std::span<const FitItem> items, const FitLimits& limits, const FitChoice& choice)
        : m_items(items), m_limits(limits), m_choice(choice) {}

    std::string reasonFor(const FitItem& item) const {
        if (item.bytes > m_limits.bytes) {
            return "alone larger than the board's bytes: it needs " + bytesText(item.bytes) +
                   ", and the board has " + bytesText(m_limits.bytes);
        }
        if (m_limits.milliseconds && item.milliseconds > *m_limits.milliseconds) {
            return "alone takes longer than the time allowed: " + secondsText(item.milliseconds) +
                   " of " + secondsText(*m_limits.milliseconds);
        }
        if (item.worth == 0) return "worth nothing, so it would only take room";
        return slotsAreFull() ? reasonWithSlotsFull(item) : reasonWithSlotsFree(item);
    }

private:
    bool slotsAreFull() const {
        return m_choice.chosen.size() >= static_cast<std::size_t>(m_limits.slots);
    }

    std::int64_t bytesLeft() const { return m_limits.bytes - m_choice.bytes; }

    std::int64_t missingTime(const FitItem& item, std::int64_t freed) const {
        if (!m_limits.milliseconds) return 0;
        return item.milliseconds - (*m_limits.milliseconds - m_choice.milliseconds) - freed;
    }

    std::string reasonWithSlotsFree(const FitItem& item) const {
        const std::int64_t missingBytes = item.bytes - bytesLeft();
        if (missingBytes > 0) {
            return "needs " + bytesText(missingBytes) + " more than the load has left";
        }
        const std::int64_t missing = missingTime(item, 0);
        if (missing > 0) return "needs " + secondsText(missing) + " more than the time has left";
        // Only a search that ran out of steps leaves a texture out that still fits.
        return "not tried before the search ran out of steps";
    }

    std::string reasonWithSlotsFull(const FitItem& item) const {
        std::optional<std::int64_t> leastWorth;
        std::int64_t freedBytes = 0;
        std::int64_t freedTime = 0;
        bool worthMoreThanSome = false;
        for (const std::size_t index : m_choice.chosen) {
            const FitItem& chosen = m_items[index];
            if (chosen.must) continue;
            leastWorth = std::min(leastWorth.value_or(chosen.worth), chosen.worth);
            if (chosen.worth >= item.worth) continue;
            worthMoreThanSome = true;
            freedBytes = std::max(freedBytes, chosen.bytes);
            freedTime = std::max(freedTime, chosen.milliseconds);
        }
        if (!leastWorth) return "the slots are full of textures that must be in";
        if (item.worth < *leastWorth) return "worth less than what fills the slots";
        if (!worthMoreThanSome) return "worth no more than what fills the slots";
        const std::int64_t missingBytes = item.bytes - bytesLeft() - freedBytes;
        if (missingBytes > 0) {
            return "needs " + bytesText(missingBytes) +
                   " more than the load has left, even in place of a texture worth less";
        }
        const std::int64_t missing = missingTime(item, freedTime);
        if (missing > 0) {
            return "needs " + secondsText(missing) +
                   " more than the time has left, even in place of a texture worth less";
        }
        return "would push out textures that are worth more together";
    }

    std::span<const FitItem> m_items;
    const FitLimits& m_limits;
    const FitChoice& m_choice;
};

}  // namespace

std::vector<LeftOut> explainLeftOut(std::span<const FitItem> items, const FitLimits& limits,
                                    const FitChoice& choice) {
    const Explainer explainer(items, limits, choice);
    std::vector<LeftOut> leftOut;
    auto next = choice.chosen.begin();
    for (std::size_t i = 0; i < items.size(); ++i) {
        if (next != choice.chosen.end() && *next == i) {
            ++next;
        } else {
            leftOut.push_back({i, explainer.reasonFor(items[i])});
        }
    }
    return leftOut;
}

}  // namespace pantile::board
