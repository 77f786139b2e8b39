#pragma once

// IdSet: ids of textures, for SQL to ask and to add to.

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
        const auto place = static_cast<std::size_t>(id);
        if (place / kBits >= m_bits.size()) m_bits.resize(place / kBits * 3 / 2 + 1);
        m_bits[place / kBits] |= std::uint64_t{1} << (place % kBits);
    }

    bool has(std::int64_t id) const {
        if (!isNear(id)) return m_far.contains(id);
        const auto place = static_cast<std::size_t>(id);
        return place / kBits < m_bits.size() &&
               (m_bits[place / kBits] >> (place % kBits) & 1U) != 0;
    }

    /// Each once; ascending, as long as none is negative.
    std::vector<std::int64_t> ids() const {
        std::vector<std::int64_t> ids;
        for (std::size_t word = 0; word < m_bits.size(); ++word) {
            for (std::uint64_t bits = m_bits[word]; bits != 0; bits &= bits - 1) {
                const auto bit = static_cast<std::size_t>(std::countr_zero(bits));
                ids.push_back(static_cast<std::int64_t>(word * kBits + bit));
            }
        }
        ids.insert(ids.end(), m_far.begin(), m_far.end());
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

    std::vector<std::uint64_t> m_bits;
    std::set<std::int64_t> m_far;
};

}  // namespace pantile::catalogue
