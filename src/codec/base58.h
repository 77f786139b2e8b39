#pragma once

// Bytes as letters and digits that no eye takes for one another: base 58, in blocks of eight bytes.
// Authority: docs/code-format.md.

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace pantile::codec {

/// The digits 0..57 in order; 0, O, I and l are not among them. Stored in codes: never change it.
inline constexpr std::string_view kBase58Digits =
    "123456789ABCDEFGHJKLMNPQRSTUVWXYZabcdefghijkmnopqrstuvwxyz";
inline constexpr unsigned kBase = 58;

/// Digit values, each 0..57.
using Symbols = std::vector<std::uint8_t>;
using SymbolSpan = std::span<const std::uint8_t>;

/// The symbols as they are written.
std::string toText(SymbolSpan symbols);

/// The CRC-32 of toText(symbols).
std::uint32_t crc32OfLetters(SymbolSpan symbols);

/// Appends `value` as exactly `count` symbols, the greatest first; it must fit.
void appendNumber(Symbols& symbols, std::uint64_t value, std::size_t count);

/// The number that at most eleven symbols write; nothing if it is above 2^64 - 1.
std::optional<std::uint64_t> readNumber(SymbolSpan symbols);

/// Symbols that so many bytes take: 11 for eight bytes, and 2, 3, 5, 6, 7, 9, 10 for 1 to 7 more.
std::size_t blockSymbols(std::size_t bytes);

void appendBlocks(Symbols& symbols, std::span<const std::uint8_t> bytes);

/// `bytes` bytes from exactly blockSymbols(bytes) symbols; nothing if there are not just so many,
/// or a block is above what its bytes can hold.
std::optional<std::vector<std::uint8_t>> readBlocks(SymbolSpan symbols, std::size_t bytes);

}  // namespace pantile::codec
