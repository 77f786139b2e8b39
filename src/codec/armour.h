#pragma once

// The armour: bytes as lines of letters and digits that survive chat and forums, with a length, a
// check of each line that also tells its number, and a check of the whole.
// Authority: docs/code-format.md.

#include <cstddef>
#include <cstdint>
#include <span>
#include <string>
#include <vector>

#include "codec/base58.h"
#include "core/result.h"

namespace pantile::codec {

// Stored in codes: never change these.
inline constexpr char kLineMark = '0';
inline constexpr char kEndMark = 'I';
inline constexpr std::uint8_t kWholeCode = 1;      ///< First symbol; 2 is kept for parts.
inline constexpr std::size_t kFirstLineData = 30;  ///< Symbols in a full line, its check aside.
inline constexpr std::size_t kFurtherLineData = 31;
inline constexpr std::size_t kHeadSymbols = 4;            ///< Form and length.
inline constexpr std::size_t kCheckSymbols = 6;           ///< CRC-32 of all symbols before it.
inline constexpr std::size_t kMaxArmouredBytes = 195111;  ///< 58^3 - 1

/// How a code of so many bytes lies in lines. Lines are counted from 1.
struct CodeShape {
    std::size_t symbols = 0;  ///< Head, payload and check value; line checks and marks aside.
    std::size_t lines = 0;

    static CodeShape of(std::size_t bytes);

    /// Symbols of a line with its check; `line` must be 1..lines.
    std::size_t lineSymbols(std::size_t line) const;
};

/// The last symbol of a line, from those before it and its number.
std::uint8_t lineCheck(SymbolSpan data, std::size_t line);

/// The line's number modulo 58 that its symbols and its check tell; it must not be empty.
std::size_t toldLineNumber(SymbolSpan dataAndCheck);

/// The length in bytes that the head tells; `symbols` must hold at least kHeadSymbols.
std::size_t toldBytes(SymbolSpan symbols);

/// The code for `bytes`, its lines joined by '\n'.
/// Errors: TooLarge if there are more than kMaxArmouredBytes.
core::Result<std::string> armoured(std::span<const std::uint8_t> bytes);

/// The bytes back from the symbols of all lines, line checks and marks taken away.
/// Errors: Corrupt, ChecksumMismatch; Unsupported for a form of a newer version.
core::Result<std::vector<std::uint8_t>> openArmour(SymbolSpan symbols);

}  // namespace pantile::codec
