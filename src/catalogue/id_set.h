#pragma once

// IdSet: ids, most of them given one after another, for SQL to ask and to add to.

#include <algorithm>
#include <bit>
#include <cstddef>
#include <cstdint>
#include <set>
#include <vector>

namespace pantile::catalogue {

class IdSet {
public:
    /// What SQLite calls one that is bound.
    static constexpr const char* kType = "pantile ids";

    void add(std::int64_t id) {
        if (!isNear(id)) {
            m_far.insert(id);
            return;
        }
        wordFor(id) |= std::uint64_t{1} << (static_cast<std::size_t>(id) % kBits);
    }

    /// Of the 64 ids from `first` on, which is a multiple of 64, those whose bit is set, the lowest
    /// for the first.
    void addRun(std::int64_t first, std::uint64_t bits) {
        if (bits == 0) return;
        if (!isNear(first)) {
            for (; bits != 0; bits &= bits - 1) m_far.insert(first + std::countr_zero(bits));
            return;
        }
        wordFor(first) |= bits;
    }

    /// The bits of such 64 ids.
    std::uint64_t run(std::int64_t first) const {
        if (!isNear(first)) return farRun(first);
        const std::size_t word = static_cast<std::size_t>(first) / kBits;
        return word < m_bits.size() ? m_bits[word] : 0;
    }

    void unite(const IdSet& other) {
        m_bits.resize(std::max(m_bits.size(), other.m_bits.size()));
        for (std::size_t i = 0; i < other.m_bits.size(); ++i) m_bits[i] |= other.m_bits[i];
        m_far.insert(other.m_far.begin(), other.m_far.end());
    }

    void intersect(const IdSet& other) {
        m_bits.resize(std::min(m_bits.size(), other.m_bits.size()));
        for (std::size_t i = 0; i < m_bits.size(); ++i) m_bits[i] &= other.m_bits[i];
        std::erase_if(m_far, [&](std::int64_t id) { return !other.m_far.contains(id); });
    }

    void subtract(const IdSet& other) {
        const std::size_t common = std::min(m_bits.size(), other.m_bits.size());
        for (std::size_t i = 0; i < common; ++i) m_bits[i] &= ~other.m_bits[i];
        std::erase_if(m_far, [&](std::int64_t id) { return other.m_far.contains(id); });
    }

    bool has(std::int64_t id) const {
        if (!isNear(id)) return m_far.contains(id);
        const auto place = static_cast<std::size_t>(id);
        return place / kBits < m_bits.size() &&
               (m_bits[place / kBits] >> (place % kBits) & 1U) != 0;
    }

    /// Calls `visit` with each once; ascending, as long as none is negative.
    template <typename Visit>
    void forEach(Visit visit) const {
        for (std::size_t word = 0; word < m_bits.size(); ++word) {
            for (std::uint64_t bits = m_bits[word]; bits != 0; bits &= bits - 1) {
                const auto bit = static_cast<std::size_t>(std::countr_zero(bits));
                visit(static_cast<std::int64_t>(word * kBits + bit));
            }
        }
        for (const std::int64_t id : m_far) visit(id);
    }

    /// In the order of forEach.
    std::vector<std::int64_t> ids() const {
        std::vector<std::int64_t> ids;
        ids.reserve(static_cast<std::size_t>(size()));
        forEach([&](std::int64_t id) { ids.push_back(id); });
        return ids;
    }

    std::int64_t size() const {
        auto count = static_cast<std::int64_t>(m_far.size());
        for (const std::uint64_t bits : m_bits) count += std::popcount(bits);
        return count;
    }

private:
    static constexpr std::size_t kBits = 64;

    // Ids are given one after another, so a bit for each is small; forged ones need not be.
    static bool isNear(std::int64_t id) {
        constexpr std::int64_t kMostNear = std::int64_t{1} << 26;
        return id >= 0 && id < kMostNear;
    }

    std::uint64_t& wordFor(std::int64_t id) {
        const std::size_t word = static_cast<std::size_t>(id) / kBits;
        if (word >= m_bits.size()) m_bits.resize(word * 3 / 2 + 1);
        return m_bits[word];
    }

    std::uint64_t farRun(std::int64_t first) const {
        std::uint64_t bits = 0;
        for (auto id = m_far.lower_bound(first); id != m_far.end(); ++id) {
            // Unsigned, for it may be the last of all numbers.
            const std::uint64_t place =
                static_cast<std::uint64_t>(*id) - static_cast<std::uint64_t>(first);
            if (place >= kBits) break;
            bits |= std::uint64_t{1} << place;
        }
        return bits;
    }

    std::vector<std::uint64_t> m_bits;
    std::set<std::int64_t> m_far;
};

}  // namespace pantile::catalogue
