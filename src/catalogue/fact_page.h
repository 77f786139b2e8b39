#pragma once

// FactPage: one number of each of 512 textures in a row as bytes. The format:
// schema/0008_fact_pages.sql.

#include <array>
#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

namespace pantile::catalogue {

inline constexpr std::size_t kTexturesPerFactPage = 512;

using FactValues = std::array<std::int64_t, kTexturesPerFactPage>;

/// The same numbers always give the same bytes.
std::vector<std::uint8_t> packFacts(const FactValues& values);

/// False, and the values are not changed, if the bytes are none that packFacts gives.
bool unpackFacts(std::span<const std::uint8_t> bytes, FactValues& values);

}  // namespace pantile::catalogue
