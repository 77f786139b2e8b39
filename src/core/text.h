#pragma once

// Checks and repairs of text that came from outside: UTF-8, control characters, direction marks.
// Sources: The Unicode Standard 15, table 3-7 (well-formed UTF-8) and UAX #9 (direction
// characters).

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

#include "core/result.h"

namespace pantile::core {

struct CodePoint {
    char32_t value = 0;
    std::size_t length = 1;  ///< Bytes taken; 1 for a bad byte.
    bool valid = false;
};

/// The character whose UTF-8 begins at byte `at`, which must lie inside `text`.
CodePoint codePointAt(std::string_view text, std::size_t at);

bool isValidUtf8(std::string_view text);

/// Number of code points in valid UTF-8.
std::size_t codePointCount(std::string_view validUtf8);

enum class LineBreaks { Forbidden, Allowed };

struct TextRule {
    std::string_view what;  ///< Names the field in messages: "title".
    std::size_t maxCodePoints = 0;
    LineBreaks lineBreaks = LineBreaks::Forbidden;
};

/// Errors: InvalidInput if `text` is not UTF-8, is longer than the rule allows, or holds control
/// characters, direction-changing characters or line breaks (those only where they are allowed).
Result<void> checkText(std::string_view text, const TextRule& rule);

/// `text` made fit for `rule`: bad bytes, control and direction characters become blanks, runs of
/// blanks become one, the ends are trimmed and the rest is cut at the rule's length.
std::string cleanedText(std::string_view text, const TextRule& rule);

/// `text` safe to print: bad bytes, control, escape and direction-changing characters are shown as
/// "\x1b" or "\u202e". Line breaks stay where they are allowed.
std::string visibleText(std::string_view text, LineBreaks lineBreaks = LineBreaks::Forbidden);

/// The first 40 code points of `text`, made visible, with "…" if more followed: for messages.
std::string excerpt(std::string_view text);

/// A name for a file made from `text`: letters, digits, '-', '_' and characters beyond ASCII that
/// are no control or direction characters; blanks become '-'; at most 60 code points and about 200
/// bytes; never empty, never beginning with a dot or a dash, and never one of the device names
/// reserved on some systems.
std::string safeFileName(std::string_view text);

}  // namespace pantile::core
