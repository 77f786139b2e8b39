#pragma once

// BoundedCache: keeps the values used last, and no more of them than it was told. Knows no Qt.

#include <cassert>
#include <cstddef>
#include <list>
#include <map>
#include <utility>

namespace pantile::desktop {

/// `Key` needs operator<. Threads: one.
template <typename Key, typename Value>
class BoundedCache {
public:
    /// `most` is at least 1.
    explicit BoundedCache(std::size_t most) : m_most(most) { assert(most > 0); }

    /// The value of `key`, made by `make` if it is not there. It stays where it is until the next
    /// call of get or clear.
    /// Cost: logarithmic in the number of values kept.
    template <typename Make>
    Value& get(const Key& key, const Make& make) {
        const auto known = m_places.find(key);
        if (known != m_places.end()) {
            m_entries.splice(m_entries.begin(), m_entries, known->second);
            return m_entries.front().second;
        }
        m_entries.emplace_front(key, make());
        m_places[key] = m_entries.begin();
        if (m_entries.size() > m_most) {
            m_places.erase(m_entries.back().first);
            m_entries.pop_back();
        }
        return m_entries.front().second;
    }

    void clear() {
        m_places.clear();
        m_entries.clear();
    }

    std::size_t size() const { return m_entries.size(); }

private:
    using Entries = std::list<std::pair<Key, Value>>;

    std::size_t m_most;
    Entries m_entries;  ///< The one used last stands first.
    std::map<Key, typename Entries::iterator> m_places;
};

}  // namespace pantile::desktop
