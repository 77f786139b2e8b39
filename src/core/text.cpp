#include "core/text.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <cstdint>

namespace pantile::core {
namespace {

bool isContinuation(unsigned char byte) {
    return (byte & 0xC0U) == 0x80U;
}

bool isControl(char32_t c) {
    return c < 0x20 || (c >= 0x7F && c < 0xA0) || c == 0x2028 || c == 0x2029;
}

// UAX #9: marks, embeddings, overrides and isolates; and the byte order mark, which hides as well.
bool changesDirection(char32_t c) {
    return c == 0x061C || c == 0x200E || c == 0x200F || (c >= 0x202A && c <= 0x202E) ||
           (c >= 0x2066 && c <= 0x2069) || c == 0xFEFF;
}

bool isLineBreak(char32_t c) {
    return c == '\n';
}

std::string escaped(char32_t c) {
    constexpr std::string_view kDigits = "0123456789abcdef";
    const int digits = c < 0x100 ? 2 : 4;
    std::string text = c < 0x100 ? "\\x" : "\\u";
    for (int shift = 4 * (digits - 1); shift >= 0; shift -= 4) {
        text += kDigits[(static_cast<std::uint32_t>(c) >> static_cast<unsigned>(shift)) & 15U];
    }
    return text;
}

bool mustNotStand(const CodePoint& d, LineBreaks lineBreaks) {
    if (!d.valid) return true;
    if (isLineBreak(d.value)) return lineBreaks == LineBreaks::Forbidden;
    return isControl(d.value) || changesDirection(d.value);
}

/// Whether `end` is what the numbered devices end in: a digit, or one of the three raised digits of
/// Latin-1, which count as such.
bool isDeviceNumber(std::string_view end) {
    if (end.size() == 1) return end[0] >= '0' && end[0] <= '9';
    return end == "\u00B9" || end == "\u00B2" || end == "\u00B3";
}

bool isReservedName(std::string_view name) {
    constexpr std::array<std::string_view, 4> kPlain = {"con", "prn", "aux", "nul"};
    std::string lower(name);
    std::transform(lower.begin(), lower.end(), lower.begin(),
                   [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    if (std::find(kPlain.begin(), kPlain.end(), lower) != kPlain.end()) return true;
    const bool isPort = lower.starts_with("com") || lower.starts_with("lpt");
    return isPort && isDeviceNumber(std::string_view(lower).substr(3));
}

bool isPlainNameCharacter(char32_t c) {
    const bool letter = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
    return letter || (c >= '0' && c <= '9') || c == '-' || c == '_';
}

}  // namespace

CodePoint codePointAt(std::string_view text, std::size_t at) {
    const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[at + i]); };
    const unsigned char lead = byte(0);
    if (lead < 0x80) return {lead, 1, true};
    std::size_t length = 0;
    char32_t value = 0;
    char32_t least = 0;
    if (lead >= 0xC2 && lead <= 0xDF) {
        length = 2, value = lead & 0x1FU, least = 0x80;
    } else if (lead >= 0xE0 && lead <= 0xEF) {
        length = 3, value = lead & 0x0FU, least = 0x800;
    } else if (lead >= 0xF0 && lead <= 0xF4) {
        length = 4, value = lead & 0x07U, least = 0x10000;
    } else {
        return {};
    }
    if (at + length > text.size()) return {};
    for (std::size_t i = 1; i < length; ++i) {
        if (!isContinuation(byte(i))) return {};
        value = (value << 6U) | (byte(i) & 0x3FU);
    }
    const bool surrogate = value >= 0xD800 && value <= 0xDFFF;
    if (value < least || value > 0x10FFFF || surrogate) return {};
    return {value, length, true};
}

bool isValidUtf8(std::string_view text) {
    for (std::size_t at = 0; at < text.size();) {
        const CodePoint d = codePointAt(text, at);
        if (!d.valid) return false;
        at += d.length;
    }
    return true;
}

std::size_t codePointCount(std::string_view validUtf8) {
    return static_cast<std::size_t>(std::count_if(validUtf8.begin(), validUtf8.end(), [](char c) {
        return !isContinuation(static_cast<unsigned char>(c));
    }));
}

Result<void> checkText(std::string_view text, const TextRule& rule) {
    const std::string what(rule.what);
    std::size_t count = 0;
    for (std::size_t at = 0; at < text.size(); ++count) {
        const CodePoint d = codePointAt(text, at);
        if (!d.valid) {
            return Error{ErrorKind::InvalidInput,
                         "the " + what + " is not UTF-8 text at byte " + std::to_string(at + 1),
                         "save or type it as UTF-8"};
        }
        if (mustNotStand(d, rule.lineBreaks)) {
            return Error{ErrorKind::InvalidInput,
                         "the " + what + " holds the character " + escaped(d.value) + " at place " +
                             std::to_string(count + 1),
                         "leave out control and direction-changing characters"};
        }
        at += d.length;
    }
    if (count > rule.maxCodePoints) {
        return Error{ErrorKind::TooLarge,
                     "the " + what + " has " + std::to_string(count) + " characters, and at most " +
                         std::to_string(rule.maxCodePoints) + " fit",
                     "shorten it"};
    }
    return {};
}

std::string cleanedText(std::string_view text, const TextRule& rule) {
    std::string cleaned;
    std::size_t count = 0;
    bool blankDue = false;
    for (std::size_t at = 0; at < text.size() && count < rule.maxCodePoints;) {
        const CodePoint d = codePointAt(text, at);
        if (mustNotStand(d, rule.lineBreaks) || d.value == ' ') {
            blankDue = !cleaned.empty();
        } else {
            if (blankDue) {
                cleaned += ' ';
                ++count;
            }
            blankDue = false;
            if (count == rule.maxCodePoints) break;
            cleaned += text.substr(at, d.length);
            ++count;
        }
        at += d.length;
    }
    while (!cleaned.empty() && (cleaned.back() == ' ' || cleaned.back() == '\n'))
        cleaned.pop_back();
    return cleaned;
}

std::string visibleText(std::string_view text, LineBreaks lineBreaks) {
    std::string visible;
    for (std::size_t at = 0; at < text.size();) {
        const CodePoint d = codePointAt(text, at);
        if (!d.valid) {
            visible += escaped(static_cast<unsigned char>(text[at]));
        } else if (mustNotStand(d, lineBreaks)) {
            visible += escaped(d.value);
        } else {
            visible += text.substr(at, d.length);
        }
        at += d.length;
    }
    return visible;
}

std::string excerpt(std::string_view text) {
    constexpr std::size_t kMaxCodePoints = 40;
    std::size_t at = 0;
    for (std::size_t count = 0; at < text.size() && count < kMaxCodePoints; ++count) {
        at += codePointAt(text, at).length;
    }
    return visibleText(text.substr(0, at)) + (at < text.size() ? "…" : "");
}

std::string safeFileName(std::string_view text) {
    constexpr std::size_t kMaxCodePoints = 60;
    // A name has at most 255 bytes, of which an id in front, an ending and what marks a file as
    // unfinished take their share.
    constexpr std::size_t kMaxBytes = 200;
    std::string name;
    std::size_t count = 0;
    for (std::size_t at = 0; at < text.size() && count < kMaxCodePoints;) {
        const CodePoint d = codePointAt(text, at);
        if (name.size() + d.length > kMaxBytes) break;
        const bool beyondAscii = d.valid && d.value >= 0xA0;
        const bool keeps = !mustNotStand(d, LineBreaks::Forbidden) &&
                           (beyondAscii || isPlainNameCharacter(d.value));
        if (keeps) {
            if (!(name.empty() && d.value == '-')) {
                name += text.substr(at, d.length);
                ++count;
            }
        } else if (!name.empty() && name.back() != '-') {
            name += '-';
            ++count;
        }
        at += d.length;
    }
    while (!name.empty() && name.back() == '-') name.pop_back();
    if (name.empty()) return "texture";
    return isReservedName(name) ? name + "-texture" : name;
}

}  // namespace pantile::core
