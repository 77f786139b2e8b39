#pragma once

// NearEntries: of each palette of a library, the entries whose colour is near to one.

#include <array>
#include <cstddef>
#include <cstdint>
#include <span>
#include <unordered_map>

#include "core/colour_neighbourhood.h"

namespace pantile::catalogue {

class NearEntries {
public:
    /// What SQLite calls one that is bound.
    static constexpr const char* kType = "pantile near entries";

    explicit NearEntries(const core::ColourNeighbourhood& neighbourhood)
        : m_neighbourhood(neighbourhood) {}

    /// `colours` has three bytes for each entry, as the table palettes.
    void addPalette(std::int64_t id, std::span<const std::uint8_t> colours);

    /// Whether one of the entries is near; `used` has a bit for each, as the table facts.
    bool isPainted(std::int64_t palette, std::span<const std::uint8_t> used) const;

    /// Whether the palette has one at all.
    bool hasOne(std::int64_t palette) const { return m_entries.contains(palette); }

private:
    using Bits = std::array<std::uint8_t, 32>;

    core::ColourNeighbourhood m_neighbourhood;
    std::unordered_map<std::int64_t, Bits> m_entries;  ///< Of palettes that have one.
};

}  // namespace pantile::catalogue
