#include "board/load_bins.h"

#include <algorithm>
#include <numeric>
#include <tuple>

#include "board/fit.h"

namespace pantile::board {
namespace {

/// Item numbers, the largest first; of equal ones the earlier first.
std::vector<std::size_t> largestFirst(std::span<const PackItem> items) {
    std::vector<std::size_t> order(items.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    const auto size = [&](std::size_t i) {
        return std::tuple(items[i].bytes, items[i].milliseconds, items[i].slots);
    };
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return size(a) > size(b); });
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
        m_spare = PackRoom::of(limits);
        m_spare.bytes *= static_cast<std::int64_t>(count);
        m_spare.slots *= static_cast<std::int64_t>(count);
        m_spare.milliseconds *= static_cast<std::int64_t>(count);
        for (const std::size_t item : m_order) m_sizes.push_back(PackRoom::of(items[item]));
        for (const PackRoom& size : m_sizes) m_spare -= size;
    }

    BinAnswer run(Loads& loads) {
        if (!m_spare.holds({})) return BinAnswer::Impossible;
        const BinAnswer answer = nextLoad(0);
        if (answer == BinAnswer::Found) loads = m_loads;
        return answer;
    }

private:
    const PackRoom& sizeAt(std::size_t place) const { return m_sizes[place]; }

    /// Opens a load with the first place from `from` on that is not taken.
    BinAnswer nextLoad(std::size_t from) {
        while (from < m_order.size() && m_taken[from]) ++from;
        if (from == m_order.size()) return BinAnswer::Found;
        m_loads.emplace_back();
        take(from);
        PackRoom room = PackRoom::of(m_limits);
        room -= sizeAt(from);
        const BinAnswer answer = fill(from, from + 1, room);
        if (answer == BinAnswer::Found) return answer;
        giveBack(from);
        m_loads.pop_back();
        return answer;
    }

    /// Goes on filling the open load, begun at place `first`, with places from `from` on.
    BinAnswer fill(std::size_t first, std::size_t from, const PackRoom& room) {
        const std::size_t leftOutBefore = m_leftOut.size();
        BinAnswer answer = BinAnswer::Impossible;
        while (answer == BinAnswer::Impossible) {
            if (*m_steps <= 0) return BinAnswer::OutOfSteps;
            if (m_progress->stopRequested()) return BinAnswer::Cancelled;
            const std::size_t place = room.slots == 0 ? nothing() : firstThatFits(from, room);
            if (place == nothing()) {
                answer = close(first, room);
                break;
            }
            take(place);
            PackRoom left = room;
            left -= sizeAt(place);
            answer = fill(first, place + 1, left);
            if (answer != BinAnswer::Impossible) break;
            giveBack(place);
            // Without this one, none of its size: which of equal items is taken does not matter.
            m_leftOut.push_back(place);
            from = place + 1;
            while (from < m_order.size() && sameSize(from, place)) ++from;
        }
        if (answer == BinAnswer::Impossible) m_leftOut.resize(leftOutBefore);
        return answer;
    }

    bool sameSize(std::size_t a, std::size_t b) const {
        return sizeAt(a).holds(sizeAt(b)) && sizeAt(b).holds(sizeAt(a));
    }

    /// Leaves the load as it is, if nothing that was left out of it fits, and goes on to the next.
    BinAnswer close(std::size_t first, const PackRoom& room) {
        if (leftOutFits(room) || !m_spare.holds(room)) return BinAnswer::Impossible;
        m_spare -= room;
        std::vector<std::size_t> leftOut;
        leftOut.swap(m_leftOut);
        const BinAnswer answer = nextLoad(first + 1);
        if (answer == BinAnswer::Found) return answer;
        leftOut.swap(m_leftOut);
        m_spare += room;
        return answer;
    }

    std::size_t nothing() const { return m_order.size(); }

    /// Each place that is looked at is a step.
    std::size_t firstThatFits(std::size_t from, const PackRoom& room) {
        const auto begin = m_sizes.begin() + static_cast<std::ptrdiff_t>(from);
        const auto tooLarge = [&](const PackRoom& size) { return size.bytes > room.bytes; };
        auto place = static_cast<std::size_t>(std::partition_point(begin, m_sizes.end(), tooLarge) -
                                              m_sizes.begin());
        for (--*m_steps; place < m_order.size() && (m_taken[place] || !room.holds(sizeAt(place)));
             ++place) {
            --*m_steps;
        }
        return place;
    }

    bool leftOutFits(const PackRoom& room) {
        *m_steps -= std::ssize(m_leftOut);
        return std::any_of(m_leftOut.begin(), m_leftOut.end(),
                           [&](std::size_t place) { return room.holds(sizeAt(place)); });
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
    std::vector<PackRoom> m_sizes;       ///< By place in the order.
    std::vector<bool> m_taken;           ///< By place in the order.
    std::vector<std::size_t> m_leftOut;  ///< Places that fitted the open load and were not taken.
    Loads m_loads;
    PackRoom m_spare;  ///< What the loads together may still leave empty.
    std::int64_t* m_steps;
    const core::Progress* m_progress;
};

}  // namespace

PackRoom PackRoom::of(const PackLimits& limits) {
    // Without a limit, room for as many of the longest as there are slots.
    return {limits.bytes, limits.slots, limits.milliseconds.value_or(kMaxFitFigure * limits.slots)};
}

PackRoom& PackRoom::operator+=(const PackRoom& other) {
    bytes += other.bytes;
    slots += other.slots;
    milliseconds += other.milliseconds;
    return *this;
}

PackRoom& PackRoom::operator-=(const PackRoom& other) {
    bytes -= other.bytes;
    slots -= other.slots;
    milliseconds -= other.milliseconds;
    return *this;
}

std::size_t FirstFit::put(std::size_t item, std::size_t preferred) {
    const PackRoom size = PackRoom::of(m_items[item]);
    std::size_t load = preferred < m_room.size() && m_room[preferred].holds(size) ? preferred : 0;
    while (load < m_room.size() && !m_room[load].holds(size)) ++load;
    if (load == m_loads.size()) {
        m_loads.emplace_back();
        m_room.push_back(PackRoom::of(m_limits));
    }
    m_loads[load].push_back(item);
    m_room[load] -= size;
    return load;
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
