#include "board/load_groups.h"

#include <algorithm>
#include <map>
#include <numeric>
#include <optional>
#include <set>
#include <tuple>
#include <utility>

namespace pantile::board {
namespace {

// Looking at a pair of items is a step; enough for some thousand items.
constexpr std::int64_t kGatherSteps = 50'000'000;

/// Loads with what they hold counted, so that a change is weighed without going through them.
class Gathering {
public:
    Gathering(std::span<const PackItem> items, const PackLimits& limits, const Loads& loads)
        : m_items(items), m_limits(limits), m_loadOf(items.size()), m_loads(loads.size()) {
        for (std::size_t load = 0; load < loads.size(); ++load) {
            for (const std::size_t item : loads[load]) put(item, load);
        }
    }

    /// Moves and exchanges as long as groups come together. False if `progress` asks to stop.
    bool improve(const core::Progress& progress) {
        bool changed = true;
        while (changed && m_steps > 0) {
            changed = false;
            for (std::size_t item = 0; item < m_items.size() && m_steps > 0; ++item) {
                if (progress.stopRequested()) return false;
                if (m_items[item].groups.empty()) continue;
                changed = moveTowardsItsGroup(item) || exchange(item) || changed;
            }
        }
        return true;
    }

    Loads loads() const {
        Loads loads(m_loads.size());
        for (std::size_t item = 0; item < m_items.size(); ++item)
            loads[m_loadOf[item]].push_back(item);
        std::erase_if(loads, [](const auto& load) { return load.empty(); });
        return loads;
    }

private:
    struct Held {
        PackRoom size;
        std::map<int, int> members;  ///< By group: how many items of it.

        int of(int group) const {
            const auto found = members.find(group);
            return found == members.end() ? 0 : found->second;
        }
    };

    void put(std::size_t item, std::size_t load) {
        Held& held = m_loads[load];
        held.size += PackRoom::of(m_items[item]);
        for (const int group : m_items[item].groups) ++held.members[group];
        m_loadOf[item] = load;
    }

    void take(std::size_t item) {
        Held& held = m_loads[m_loadOf[item]];
        held.size -= PackRoom::of(m_items[item]);
        for (const int group : m_items[item].groups) {
            if (--held.members[group] == 0) held.members.erase(group);
        }
    }

    bool isIn(std::size_t item, int group) const {
        const std::vector<int>& groups = m_items[item].groups;
        return std::find(groups.begin(), groups.end(), group) != groups.end();
    }

    /// Parts more or less if the item went to `load`, and `other` came from there, if there is one.
    int partsMore(std::size_t item, std::size_t load, std::optional<std::size_t> other) const {
        int parts = 0;
        for (const int group : m_items[item].groups) {
            if (other && isIn(*other, group)) continue;
            parts += (m_loads[load].of(group) == 0 ? 1 : 0) -
                     (m_loads[m_loadOf[item]].of(group) == 1 ? 1 : 0);
        }
        return parts;
    }

    bool moveTowardsItsGroup(std::size_t item) {
        for (std::size_t load = 0; load < m_loads.size(); ++load) {
            --m_steps;
            if (load == m_loadOf[item] || partsMore(item, load, std::nullopt) >= 0) continue;
            if (!holdsAfter(load, PackRoom::of(m_items[item]), {})) continue;
            take(item);
            put(item, load);
            return true;
        }
        return false;
    }

    bool exchange(std::size_t item) {
        for (std::size_t other = 0; other < m_items.size(); ++other) {
            --m_steps;
            if (m_loadOf[other] == m_loadOf[item] || !exchangeJoins(item, other)) continue;
            const std::size_t here = m_loadOf[item];
            const std::size_t there = m_loadOf[other];
            take(item);
            take(other);
            put(item, there);
            put(other, here);
            return true;
        }
        return false;
    }

    bool exchangeJoins(std::size_t item, std::size_t other) const {
        const std::size_t here = m_loadOf[item];
        const std::size_t there = m_loadOf[other];
        if (partsMore(item, there, other) + partsMore(other, here, item) >= 0) return false;
        const PackRoom ofItem = PackRoom::of(m_items[item]);
        const PackRoom ofOther = PackRoom::of(m_items[other]);
        return holdsAfter(here, ofOther, ofItem) && holdsAfter(there, ofItem, ofOther);
    }

    bool holdsAfter(std::size_t load, const PackRoom& coming, const PackRoom& going) const {
        PackRoom size = m_loads[load].size;
        size += coming;
        size -= going;
        return PackRoom::of(m_limits).holds(size);
    }

    std::span<const PackItem> m_items;
    PackLimits m_limits;
    std::vector<std::size_t> m_loadOf;  ///< By item.
    std::vector<Held> m_loads;
    std::int64_t m_steps = kGatherSteps;
};

/// Group after group, the one of most bytes first: each item into the load that the last one of its
/// group went to, else the first that has room, else a new one.
Loads groupByGroup(std::span<const PackItem> items, const PackLimits& limits) {
    // Of several groups the first counts here.
    const auto groupOf = [&](std::size_t i) {
        return items[i].groups.empty() ? -1 : items[i].groups.front();
    };
    std::map<int, std::int64_t> bytesOf;
    for (std::size_t i = 0; i < items.size(); ++i) bytesOf[groupOf(i)] += items[i].bytes;
    std::vector<std::size_t> order(items.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    const auto rank = [&](std::size_t i) {
        const int group = groupOf(i);
        return std::tuple(items[i].groups.empty(), -bytesOf[group], group, -items[i].bytes);
    };
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return rank(a) < rank(b); });
    FirstFit loads(items, limits);
    std::map<int, std::size_t> lastLoadOf;
    for (const std::size_t item : order) {
        std::size_t& last = lastLoadOf[groupOf(item)];
        last = loads.put(item, last);
    }
    return std::move(loads).take();
}

std::set<int> groupsIn(std::span<const PackItem> items, const std::vector<std::size_t>& load) {
    std::set<int> groups;
    for (const std::size_t item : load) {
        groups.insert(items[item].groups.begin(), items[item].groups.end());
    }
    return groups;
}

std::size_t shared(const std::set<int>& a, const std::set<int>& b) {
    return static_cast<std::size_t>(
        std::count_if(a.begin(), a.end(), [&](int group) { return b.contains(group); }));
}

/// From the load that is worth most always on to the one that shares most groups; of equals to the
/// one that is worth most, then to the one with the earliest item.
Loads inSequence(std::span<const PackItem> items, Loads loads) {
    // Not by the vectors' own order: GCC 12's library gets it wrong on big-endian machines, by
    // looking at as many bytes as there are numbers.
    std::sort(loads.begin(), loads.end(), [](const auto& a, const auto& b) {
        return std::lexicographical_compare(a.begin(), a.end(), b.begin(), b.end());
    });
    std::vector<std::set<int>> groups;
    std::vector<std::int64_t> worth;
    for (const auto& load : loads) {
        groups.push_back(groupsIn(items, load));
        worth.push_back(0);
        for (const std::size_t item : load) worth.back() += items[item].worth;
    }
    Loads sequence;
    std::vector<std::size_t> left(loads.size());
    std::iota(left.begin(), left.end(), std::size_t{0});
    std::set<int> last;
    while (!left.empty()) {
        const auto rank = [&](std::size_t load) {
            return std::pair(shared(last, groups[load]), worth[load]);
        };
        const auto next = std::max_element(left.begin(), left.end(),
                                           [&](auto a, auto b) { return rank(a) < rank(b); });
        last = groups[*next];
        sequence.push_back(std::move(loads[*next]));
        left.erase(next);
    }
    return sequence;
}

}  // namespace

std::size_t groupParts(std::span<const PackItem> items, const Loads& loads) {
    std::size_t parts = 0;
    for (const auto& load : loads) parts += groupsIn(items, load).size();
    return parts;
}

core::Result<Loads> gatherGroups(std::span<const PackItem> items, const PackLimits& limits,
                                 Loads loads, const core::Progress& progress) {
    std::vector<Loads> starts = {std::move(loads)};
    Loads byGroup = groupByGroup(items, limits);
    if (byGroup.size() <= starts.front().size()) starts.push_back(std::move(byGroup));
    Loads best;
    for (const Loads& start : starts) {
        Gathering gathering(items, limits, start);
        if (!gathering.improve(progress)) return core::stoppedError();
        Loads gathered = gathering.loads();
        const auto rank = [&](const Loads& found) {
            return std::pair(found.size(), groupParts(items, found));
        };
        if (best.empty() || rank(gathered) < rank(best)) best = std::move(gathered);
    }
    return inSequence(items, std::move(best));
}

}  // namespace pantile::board
