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
inline constexpr std::size_t kFirstLineData = 30;  ///< Symbols in a full line, its check aside.
inline constexpr std::size_t kFurtherLineData = 31;
// A unit modulo 58, so that one wrong symbol always changes the sum of a line; of order 28, so that
// no two of 28 symbols in a row weigh the same.
inline constexpr unsigned kLineWeight = 3;
inline constexpr std::size_t kHeadSymbols = 4;            ///< Form and length.
inline constexpr std::size_t kCheckSymbols = 6;           ///< CRC-32 of all symbols before it.
inline constexpr std::size_t kMaxArmouredBytes = 195111;  ///< 58^3 - 1

/// What a code holds; its first symbol. Stored in codes: never change these.
enum class ArmourForm : std::uint8_t {
    Whole = 1,  ///< A container.
    Part = 2,   ///< A part of one: see parts.h.
};

constexpr bool isKnownForm(std::uint8_t symbol) {
    return symbol == static_cast<std::uint8_t>(ArmourForm::Whole) ||
           symbol == static_cast<std::uint8_t>(ArmourForm::Part);
}

/// How a code of so many bytes lies in lines. Lines are counted from 1.
struct CodeShape {
    std::size_t symbols = 0;  ///< Head, payload and check value; line checks and marks aside.
    std::size_t lines = 0;

    static CodeShape of(std::size_t bytes);

    /// Symbols of a line with its check; `line` must be 1..lines.
    std::size_t lineSymbols(std::size_t line) const;

    /// Where the first symbol of a line stands in the stream.
    static std::size_t lineBegin(std::size_t line);

    /// Letters of the whole text, with marks, line checks and line feeds.
    std::size_t characters() const;

    bool operator==(const CodeShape&) const = default;
};

/// The last symbol of a line, from those before it and its number.
std::uint8_t lineCheck(SymbolSpan data, std::size_t line);

/// The line's number modulo 58 that its symbols and its check tell; it must not be empty.
std::size_t toldLineNumber(SymbolSpan dataAndCheck);

/// The length in bytes that the head tells; `symbols` must hold at least kHeadSymbols.
std::size_t toldBytes(SymbolSpan symbols);

/// The code for `bytes`, its lines joined by '\n'.
/// Errors: TooLarge if there are more than kMaxArmouredBytes.
core::Result<std::string> armoured(std::span<const std::uint8_t> bytes,
                                   ArmourForm form = ArmourForm::Whole);

/// Symbols as the lines of a code, with marks and line checks, joined by '\n'.
std::string writtenLines(SymbolSpan symbols);

struct OpenedArmour {
    ArmourForm form = ArmourForm::Whole;
    std::vector<std::uint8_t> bytes;
};

/// The bytes back from the symbols of all lines, line checks and marks taken away.
/// Errors: Corrupt, ChecksumMismatch; Unsupported for a form of a newer version.
core::Result<OpenedArmour> openArmour(SymbolSpan symbols);

}  // namespace pantile::codec
