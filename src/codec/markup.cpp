#include "codec/markup.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cstdint>
#include <string>
#include <utility>

namespace pantile::codec {
namespace {

constexpr std::size_t kMaxTagBytes = 4096;
constexpr std::size_t kMaxEntityBytes = 24;
constexpr std::size_t kMaxNameBytes = 12;

bool isLetter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

bool isDigit(char c) {
    return c >= '0' && c <= '9';
}

std::optional<char32_t> numberIn(std::string_view digits, int base) {
    std::uint32_t value = 0;
    const char* const end = digits.data() + digits.size();
    const auto [stop, problem] = std::from_chars(digits.data(), end, value, base);
    if (digits.empty() || problem != std::errc() || stop != end) return std::nullopt;
    return static_cast<char32_t>(value);
}

/// The element's name in lower case, as far as it can be one that breaks lines.
std::string tagName(std::string_view inside) {
    std::string name;
    if (inside.starts_with('/')) inside.remove_prefix(1);
    for (const char c : inside.substr(0, kMaxNameBytes)) {
        if (!isLetter(c) && !isDigit(c)) break;
        name += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    }
    return name;
}

bool breaksLine(std::string_view name) {
    constexpr std::array<std::string_view, 20> kNames = {
        "article", "blockquote", "br", "dd",  "div",     "dt",    "h1", "h2", "h3", "hr",
        "li",      "ol",         "p",  "pre", "section", "table", "td", "th", "tr", "ul"};
    return std::find(kNames.begin(), kNames.end(), name) != kNames.end();
}

std::optional<Markup> tagAt(std::string_view text) {
    const bool opens = text.size() > 2 && (isLetter(text[1]) || text[1] == '/' || text[1] == '!');
    if (!opens) return std::nullopt;
    const std::size_t end = text.substr(1, kMaxTagBytes).find_first_of("<>");
    if (end == std::string_view::npos || text[end + 1] != '>') return std::nullopt;
    const std::string_view inside = text.substr(1, end);
    // A loose '<' of a plain text must not hide a code in front of the next '>'.
    if (inside.find("0I") != std::string_view::npos) return std::nullopt;
    return Markup{end + 2, breaksLine(tagName(inside)) ? U'\n' : U'\0'};
}

/// '&lt;br /&gt;': a tag that ends a line, on a page whose text was escaped twice.
std::optional<Markup> escapedTagAt(std::string_view text) {
    constexpr std::string_view kOpen = "&lt;";
    constexpr std::string_view kClose = "&gt;";
    constexpr std::size_t kMaxInside = kMaxNameBytes + 2;
    if (!text.starts_with(kOpen)) return std::nullopt;
    std::string_view inside = text.substr(kOpen.size(), kMaxInside + kClose.size());
    const std::size_t end = inside.find(kClose);
    if (end == std::string_view::npos) return std::nullopt;
    inside = inside.substr(0, end);
    if (inside.ends_with(" /")) inside.remove_suffix(2);
    if (inside.ends_with('/')) inside.remove_suffix(1);
    const std::string name = tagName(inside);
    const bool nothingElse = inside.ends_with(name) && inside.size() <= name.size() + 1;
    if (!nothingElse || !breaksLine(name)) return std::nullopt;
    return Markup{kOpen.size() + end + kClose.size(), U'\n'};
}

std::optional<Markup> entityAt(std::string_view text) {
    constexpr std::array<std::pair<std::string_view, char32_t>, 8> kNames = {
        {{"shy", 0xAD},
         {"zwnj", 0x200C},
         {"zwj", 0x200D},
         {"lrm", 0x200E},
         {"rlm", 0x200F},
         {"ZeroWidthSpace", 0x200B},
         {"NoBreak", 0x2060},
         {"NewLine", '\n'}}};
    const std::size_t end = text.substr(0, kMaxEntityBytes).find(';');
    if (end == std::string_view::npos || end < 2) return std::nullopt;
    std::string_view name = text.substr(1, end - 1);
    if (name.starts_with('#')) {
        const bool hex = name.size() > 1 && (name[1] == 'x' || name[1] == 'X');
        const std::optional<char32_t> meaning =
            hex ? numberIn(name.substr(2), 16) : numberIn(name.substr(1), 10);
        return meaning ? std::optional(Markup{end + 1, *meaning}) : std::nullopt;
    }
    if (!std::all_of(name.begin(), name.end(), isLetter)) return std::nullopt;
    const auto* const known = std::find_if(kNames.begin(), kNames.end(),
                                           [&](const auto& entry) { return entry.first == name; });
    return Markup{end + 1, known == kNames.end() ? U' ' : known->second};
}

std::optional<Markup> escapeAt(std::string_view text) {
    if (text.size() < 2) return std::nullopt;
    switch (text[1]) {
        case 'n':
        case 'r':
            return Markup{2, U'\n'};
        case 't':
            return Markup{2, U' '};
        case 'u': {
            constexpr std::size_t kDigits = 4;
            if (text.size() < 2 + kDigits) return std::nullopt;
            const std::optional<char32_t> meaning = numberIn(text.substr(2, kDigits), 16);
            return meaning ? std::optional(Markup{2 + kDigits, *meaning}) : std::nullopt;
        }
        default:
            return std::nullopt;
    }
}

std::optional<Markup> percentAt(std::string_view text) {
    if (text.size() < 3) return std::nullopt;
    const std::optional<char32_t> byte = numberIn(text.substr(1, 2), 16);
    if (!byte) return std::nullopt;
    // Other escapes stand between words at most. To take them too would let a percent sign that
    // slipped into a code take two of its letters along.
    if (*byte == '\n' || *byte == '\r') return Markup{3, U'\n'};
    if (*byte == ' ' || *byte == '\t') return Markup{3, U' '};
    return std::nullopt;
}

}  // namespace

std::optional<Markup> markupAt(std::string_view text, std::size_t at) {
    const std::string_view rest = text.substr(at);
    switch (rest.front()) {
        case '<':
            return tagAt(rest);
        case '&':
            if (const auto tag = escapedTagAt(rest)) return tag;
            return entityAt(rest);
        case '\\':
            return escapeAt(rest);
        case '%':
            return percentAt(rest);
        default:
            return std::nullopt;
    }
}

}  // namespace pantile::codec
