#pragma once

// IdSet: ids of textures, for SQL to ask and to add to.

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <utility>
#include <vector>

namespace pantile::catalogue {

class IdSet {
public:
    /// What SQLite calls one that is bound.
    static constexpr const char* kType = "pantile ids";

    /// In any order, any number of times.
    void add(std::int64_t id) { m_ids.push_back(id); }

    /// To be called after the last was added: makes them ascend, each once.
    void close() {
        if (!std::is_sorted(m_ids.begin(), m_ids.end())) std::sort(m_ids.begin(), m_ids.end());
        m_ids.erase(std::unique(m_ids.begin(), m_ids.end()), m_ids.end());
        // Ids are given one after another, so a bit for each is small; forged ones need not be.
        constexpr std::int64_t kMostForEach = 64;
        const auto count = static_cast<std::int64_t>(m_ids.size());
        if (m_ids.empty() || m_ids.front() < 0 || m_ids.back() / kMostForEach > count) return;
        m_isThere.resize(static_cast<std::size_t>(m_ids.back()) + 1);
        for (const std::int64_t id : m_ids) m_isThere[static_cast<std::size_t>(id)] = true;
    }

    bool has(std::int64_t id) const {
        if (m_isThere.empty()) return std::binary_search(m_ids.begin(), m_ids.end(), id);
        const auto place = static_cast<std::uint64_t>(id);
        return place < m_isThere.size() && m_isThere[place];
    }

    /// Ascending.
    const std::vector<std::int64_t>& ids() const { return m_ids; }

    std::int64_t size() const { return static_cast<std::int64_t>(m_ids.size()); }

private:
    std::vector<std::int64_t> m_ids;
    std::vector<bool> m_isThere;  ///< Empty where the ids are searched.
};

}  // namespace pantile::catalogue
