#pragma once

// PageCache: a long list of which only a few pages are held. Knows no Qt.

#include <algorithm>
#include <cassert>
#include <cstddef>
#include <vector>

#include "desktop/models/bounded_cache.h"

namespace pantile::desktop {

struct PageLimits {
    std::size_t pageLength = 128;
    std::size_t mostPages = 24;
};

/// Threads: one.
template <typename Item>
class PageCache {
public:
    explicit PageCache(PageLimits limits = {}) : m_limits(limits), m_pages(limits.mostPages) {
        assert(limits.pageLength > 0);
    }

    /// Forgets all pages; from now on the list has `count` items.
    void reset(std::size_t count) {
        m_count = count;
        m_pages.clear();
    }

    std::size_t count() const { return m_count; }

    /// The item at `index`, which must be below count(). If its page is not held, `load(first,
    /// length)` is called for it and must give that many items. The item stays where it is until
    /// the next call.
    template <typename Load>
    const Item& at(std::size_t index, const Load& load) {
        assert(index < m_count);
        const std::size_t page = index / m_limits.pageLength;
        const std::size_t first = page * m_limits.pageLength;
        const std::vector<Item>& items = m_pages.get(page, [&] {
            const std::size_t length = std::min(m_limits.pageLength, m_count - first);
            std::vector<Item> loaded = load(first, length);
            assert(loaded.size() == length);
            return loaded;
        });
        return items[index - first];
    }

private:
    PageLimits m_limits;
    std::size_t m_count = 0;
    BoundedCache<std::size_t, std::vector<Item>> m_pages;
};

}  // namespace pantile::desktop
