#include "board/load_bins.h"

#include <algorithm>
#include <functional>
#include <numeric>

namespace pantile::board {
namespace {

/// Item numbers, the largest first; of equal ones the earlier first.
std::vector<std::size_t> largestFirst(std::span<const PackItem> items) {
    std::vector<std::size_t> order(items.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return items[a].bytes > items[b].bytes; });
    return order;
}

/// Depth-first over loads. A load always holds the largest item that is left, as some load has to;
/// and nothing that is left fits into it beside, as moving an item forward never hurts.
class BinSearch {
public:
    BinSearch(std::span<const PackItem> items, const PackLimits& limits, std::size_t count,
              std::int64_t& steps, const core::Progress& progress)
        : m_items(items),
          m_limits(limits),
          m_order(largestFirst(items)),
          m_taken(items.size(), false),
          m_steps(&steps),
          m_progress(&progress) {
        std::int64_t sum = 0;
        for (const PackItem& item : items) sum += item.bytes;
        const auto loads = static_cast<std::int64_t>(count);
        m_spareBytes = loads * limits.bytes - sum;
        m_spareSlots = loads * limits.slots - std::ssize(items);
    }

    BinAnswer run(Loads& loads) {
        if (m_spareBytes < 0 || m_spareSlots < 0) return BinAnswer::Impossible;
        const BinAnswer answer = nextLoad(0);
        if (answer == BinAnswer::Found) loads = m_loads;
        return answer;
    }

private:
    std::int64_t bytesAt(std::size_t place) const { return m_items[m_order[place]].bytes; }

    /// Opens a load with the first place from `from` on that is not taken.
    BinAnswer nextLoad(std::size_t from) {
        while (from < m_order.size() && m_taken[from]) ++from;
        if (from == m_order.size()) return BinAnswer::Found;
        m_loads.emplace_back();
        take(from);
        const BinAnswer answer = fill(from, from + 1, m_limits.bytes - bytesAt(from));
        if (answer == BinAnswer::Found) return answer;
        giveBack(from);
        m_loads.pop_back();
        return answer;
    }

    /// Goes on filling the open load, begun at place `first`, with places from `from` on.
    BinAnswer fill(std::size_t first, std::size_t from, std::int64_t room) {
        const std::size_t leftOutBefore = m_leftOut.size();
        BinAnswer answer = BinAnswer::Impossible;
        while (answer == BinAnswer::Impossible) {
            if (*m_steps <= 0) return BinAnswer::OutOfSteps;
            if (m_progress->stopRequested()) return BinAnswer::Cancelled;
            const std::size_t place = slotsFull() ? nothing() : firstThatFits(from, room);
            if (place == nothing()) {
                answer = close(first, room);
                break;
            }
            take(place);
            answer = fill(first, place + 1, room - bytesAt(place));
            if (answer != BinAnswer::Impossible) break;
            giveBack(place);
            // Without this one, none of its size: which of equal items is taken does not matter.
            m_leftOut.push_back(place);
            from = place + 1;
            while (from < m_order.size() && bytesAt(from) == bytesAt(place)) ++from;
        }
        if (answer == BinAnswer::Impossible) m_leftOut.resize(leftOutBefore);
        return answer;
    }

    /// Leaves the load as it is, if nothing that was left out of it fits, and goes on to the next.
    BinAnswer close(std::size_t first, std::int64_t room) {
        const int free = m_limits.slots - static_cast<int>(m_loads.back().size());
        if (free > 0 && leftOutFits(room)) return BinAnswer::Impossible;
        if (room > m_spareBytes || free > m_spareSlots) return BinAnswer::Impossible;
        m_spareBytes -= room;
        m_spareSlots -= free;
        std::vector<std::size_t> leftOut;
        leftOut.swap(m_leftOut);
        const BinAnswer answer = nextLoad(first + 1);
        if (answer == BinAnswer::Found) return answer;
        leftOut.swap(m_leftOut);
        m_spareSlots += free;
        m_spareBytes += room;
        return answer;
    }

    std::size_t nothing() const { return m_order.size(); }

    bool slotsFull() const {
        return m_loads.back().size() == static_cast<std::size_t>(m_limits.slots);
    }

    /// Each place that is looked at is a step.
    std::size_t firstThatFits(std::size_t from, std::int64_t room) {
        const auto fits = [&](std::size_t item) { return m_items[item].bytes <= room; };
        const auto begin = m_order.begin() + static_cast<std::ptrdiff_t>(from);
        auto place = static_cast<std::size_t>(
            std::partition_point(begin, m_order.end(), std::not_fn(fits)) - m_order.begin());
        for (--*m_steps; place < m_order.size() && m_taken[place]; ++place) --*m_steps;
        return place;
    }

    bool leftOutFits(std::int64_t room) const {
        return std::any_of(m_leftOut.begin(), m_leftOut.end(),
                           [&](std::size_t place) { return bytesAt(place) <= room; });
    }

    void take(std::size_t place) {
        m_taken[place] = true;
        m_loads.back().push_back(m_order[place]);
    }

    void giveBack(std::size_t place) {
        m_taken[place] = false;
        m_loads.back().pop_back();
    }

    std::span<const PackItem> m_items;
    PackLimits m_limits;
    std::vector<std::size_t> m_order;
    std::vector<bool> m_taken;           ///< By place in the order.
    std::vector<std::size_t> m_leftOut;  ///< Places that fitted the open load and were not taken.
    Loads m_loads;
    std::int64_t m_spareBytes = 0;  ///< What the loads together may still leave empty.
    std::int64_t m_spareSlots = 0;
    std::int64_t* m_steps;
    const core::Progress* m_progress;
};

}  // namespace

std::size_t FirstFit::put(std::size_t item, std::size_t preferred) {
    std::size_t load = preferred < m_loads.size() && fits(item, preferred) ? preferred : 0;
    while (load < m_loads.size() && !fits(item, load)) ++load;
    if (load == m_loads.size()) {
        m_loads.emplace_back();
        m_room.push_back(m_limits.bytes);
    }
    m_loads[load].push_back(item);
    m_room[load] -= m_items[item].bytes;
    return load;
}

bool FirstFit::fits(std::size_t item, std::size_t load) const {
    return m_room[load] >= m_items[item].bytes &&
           m_loads[load].size() < static_cast<std::size_t>(m_limits.slots);
}

Loads firstFitDecreasing(std::span<const PackItem> items, const PackLimits& limits) {
    FirstFit loads(items, limits);
    for (const std::size_t item : largestFirst(items)) loads.put(item);
    return std::move(loads).take();
}

BinAnswer packInto(std::span<const PackItem> items, const PackLimits& limits, std::size_t count,
                   std::int64_t& steps, const core::Progress& progress, Loads& loads) {
    return BinSearch(items, limits, count, steps, progress).run(loads);
}

}  // namespace pantile::board
