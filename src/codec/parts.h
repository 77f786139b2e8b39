#pragma once

// One code as several posts: parts that may arrive in any order, twice, or among other codes.
// Authority: docs/code-format.md.

#include <cstddef>
#include <cstdint>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "codec/base58.h"
#include "core/result.h"

namespace pantile::codec {

/// Enough for the longest code at the least limit. Stored in codes: never make it smaller.
inline constexpr std::size_t kMaxParts = 8192;

/// Which part of which code one is.
struct PartHead {
    std::size_t number = 1;   ///< 1..parts
    std::size_t parts = 2;    ///< At least 2.
    std::uint32_t whole = 0;  ///< The CRC-32 of the whole container.

    /// "part 2 of 3"
    std::string name() const;
};

struct Part {
    PartHead head;
    std::vector<std::uint8_t> slice;
};

/// `container` as that many codes, whose slices differ by at most a byte.
/// Errors: TooLarge, if it is more than one code may hold; InvalidInput, if there are fewer than
/// two or more than kMaxParts parts, or more parts than bytes.
core::Result<std::vector<std::string>> armouredParts(std::span<const std::uint8_t> container,
                                                     std::size_t parts);

/// Letters of the longest of so many parts.
std::size_t longestPart(std::size_t containerBytes, std::size_t parts);

/// What stood in the armour of a part. Errors: Corrupt.
core::Result<Part> readPart(std::span<const std::uint8_t> bytes);

/// The head of a part from the symbols of its first line, checks aside; nothing if they do not hold
/// one. For saying which part is damaged.
std::optional<PartHead> readPartHead(SymbolSpan firstLine);

/// The container that all slices of a code, by their numbers, make together.
/// Errors: Corrupt, if they were not cut from one container; TooLarge.
core::Result<std::vector<std::uint8_t>> joinParts(
    const PartHead& head, const std::map<std::size_t, std::vector<std::uint8_t>>& slices);

}  // namespace pantile::codec
