#pragma once

// EntrySets: of each palette of a library, the entries whose colour passes a test.

#include <array>
#include <cstddef>
#include <cstdint>
#include <functional>
#include <map>
#include <span>
#include <utility>
#include <vector>

#include "core/colour.h"

namespace pantile::catalogue {

/// A bit for each palette entry, the lowest of the first word for entry 0.
using EntryBits = std::array<std::uint64_t, 4>;

class EntrySets {
public:
    /// What SQLite calls one that is bound.
    static constexpr const char* kType = "pantile entries";

    using Test = std::function<bool(core::Rgb8)>;

    explicit EntrySets(Test test) : m_test(std::move(test)) {}

    /// `colours` has three bytes for each entry, as the table palettes.
    void addPalette(std::int64_t id, std::span<const std::uint8_t> colours);

    /// Whether one of these entries of the palette passes.
    bool hasOneOf(std::int64_t palette, const EntryBits& entries) const {
        const EntryBits* const passing = find(palette);
        if (passing == nullptr) return false;
        std::uint64_t common = 0;
        for (std::size_t i = 0; i < entries.size(); ++i) common |= (*passing)[i] & entries[i];
        return common != 0;
    }

private:
    // Ids are given one after another, so a place for each is small; forged ones need not be.
    static constexpr std::int64_t kMostNear = std::int64_t{1} << 26;

    const EntryBits* find(std::int64_t palette) const {
        if (palette < 0 || palette >= kMostNear) {
            const auto found = m_far.find(palette);
            return found == m_far.end() ? nullptr : &found->second;
        }
        const auto at = static_cast<std::size_t>(palette);
        if (at >= m_places.size() || m_places[at] == 0) return nullptr;
        return &m_passing[m_places[at] - 1];
    }

    Test m_test;
    std::vector<std::uint32_t> m_places;  ///< In m_passing, from 1; 0 for none.
    std::vector<EntryBits> m_passing;
    std::map<std::int64_t, EntryBits> m_far;
};

}  // namespace pantile::catalogue
