#pragma once

// MatchList: the textures that match a query, each with the number that orders it.

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <vector>

#include "catalogue/sort_key.h"
#include "core/ids.h"

namespace pantile::catalogue {

class MatchList {
public:
    struct Match {
        std::int64_t key = 0;
        std::int64_t id = 0;

        auto operator<=>(const Match&) const = default;
    };

    /// In any order; each once.
    void add(const Match& match) { m_matches.push_back(match); }

    std::int64_t size() const { return static_cast<std::int64_t>(m_matches.size()); }

    std::vector<Match>& matches() { return m_matches; }

    /// The ids from `offset` on, at most `limit` of them and all if it is negative, by rising keys
    /// and then ids, or all the other way about. Leaves the matches in another order.
    std::vector<core::TextureId> page(SortDirection direction, std::int64_t offset,
                                      std::int64_t limit) {
        const std::int64_t begin = std::min(offset, size());
        const std::int64_t count = limit < 0 ? size() - begin : std::min(limit, size() - begin);
        if (direction == SortDirection::Usual) return part(begin, count, std::less<>());
        return part(begin, count, std::greater<>());
    }

private:
    template <typename Order>
    std::vector<core::TextureId> part(std::int64_t begin, std::int64_t count, Order order) {
        const auto first = m_matches.begin() + begin;
        const auto last = first + count;
        if (!std::is_sorted(m_matches.begin(), m_matches.end(), order)) {
            std::nth_element(m_matches.begin(), first, m_matches.end(), order);
            std::partial_sort(first, last, m_matches.end(), order);
        }
        std::vector<core::TextureId> ids;
        ids.reserve(static_cast<std::size_t>(count));
        std::for_each(first, last, [&](const Match& match) { ids.push_back({match.id}); });
        return ids;
    }

    std::vector<Match> m_matches;
};

}  // namespace pantile::catalogue
