#pragma once

// MatchList: of the textures that match a query, those that come first, each with the number that
// orders it.

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <limits>
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

    /// By rising keys and then ids, or all the other way about. Keeps as many as come first up to
    /// the end of the page that starts at `offset` and has at most `limit`; all if that is
    /// negative.
    MatchList(SortDirection direction, std::int64_t offset, std::int64_t limit)
        : m_isReversed(direction == SortDirection::Reversed),
          m_offset(static_cast<std::size_t>(offset)),
          m_most(limit < 0 ? kAll : m_offset + static_cast<std::size_t>(limit)) {}

    bool comesBefore(const Match& a, const Match& b) const { return m_isReversed ? b < a : a < b; }

    /// In any order; each once.
    void add(const Match& match) {
        if (m_isFull && !comesBefore(match, m_last)) return;
        m_matches.push_back(match);
        if (m_matches.size() / 2 > m_most) dropRest();
    }

    /// The ids of the page.
    std::vector<core::TextureId> page() {
        const auto order = [this](const Match& a, const Match& b) { return comesBefore(a, b); };
        if (!std::is_sorted(m_matches.begin(), m_matches.end(), order)) {
            std::sort(m_matches.begin(), m_matches.end(), order);
        }
        std::vector<core::TextureId> ids;
        for (std::size_t i = m_offset; i < std::min(m_matches.size(), m_most); ++i) {
            ids.push_back({m_matches[i].id});
        }
        return ids;
    }

private:
    static constexpr std::size_t kAll = std::numeric_limits<std::size_t>::max();

    void dropRest() {
        const auto last = m_matches.begin() + static_cast<std::ptrdiff_t>(m_most);
        std::nth_element(m_matches.begin(), last, m_matches.end(),
                         [this](const Match& a, const Match& b) { return comesBefore(a, b); });
        m_last = *last;
        m_matches.resize(m_most);
        m_isFull = true;
    }

    bool m_isReversed;
    std::size_t m_offset;
    std::size_t m_most;
    std::vector<Match> m_matches;
    bool m_isFull = false;  ///< At least as many as wanted come before m_last.
    Match m_last;
};

}  // namespace pantile::catalogue
