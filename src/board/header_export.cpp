#include "board/header_export.h"

#include <algorithm>
#include <array>
#include <charconv>

#include "board/cautions.h"
#include "board/load_layout.h"
#include "core/text.h"

namespace pantile::board {
namespace {

using core::Error;
using core::ErrorKind;
using core::Result;

constexpr std::string_view kHexDigits = "0123456789abcdef";
constexpr std::size_t kBytesPerLine = 16;

/// `text` for a comment: what could end it, or mean something to a compiler, becomes '_'.
std::string commentText(std::string_view text) {
    std::string safe = core::visibleText(text);
    constexpr std::string_view kUnsafe = "*/\\?\"'`<>%$@#";
    for (char& c : safe) {
        if (kUnsafe.find(c) != std::string_view::npos) c = '_';
    }
    return safe;
}

std::string openingComment(std::string_view name, std::span<const std::string> titles) {
    std::string text = "/* Pantile load, version 1: " + commentText(name) + "\n *\n";
    for (std::size_t i = 0; i < titles.size(); ++i) {
        text += " * slot " + std::to_string(i + 1) + ": " + commentText(titles[i]) + "\n";
    }
    text += " *\n";
    for (const std::string_view caution : cautions()) {
        text += " * " + std::string(caution) + "\n";
    }
    return text + " */\n";
}

std::string arrayBody(std::span<const std::uint8_t> load) {
    std::string text;
    text.reserve(load.size() * 6);
    for (std::size_t i = 0; i < load.size(); ++i) {
        text += i % kBytesPerLine == 0 ? "\n    0x" : " 0x";
        text += kHexDigits[load[i] >> 4U];
        text += kHexDigits[load[i] & 15U];
        text += ',';
    }
    return text;
}

/// The words of a C text, without blanks and comments.
class Scanner {
public:
    explicit Scanner(std::string_view text) : m_text(text) {}

    /// Errors: Corrupt if the next word is not `word`.
    Result<void> expect(std::string_view word) {
        PANTILE_ASSIGN_OR_RETURN(const std::string_view found, next());
        if (found == word) return {};
        return fault("has '" + core::excerpt(found) + "' where '" + std::string(word) +
                     "' has to be");
    }

    Result<void> expectAll(std::span<const std::string_view> words) {
        for (const std::string_view word : words) PANTILE_RETURN_IF_ERROR(expect(word));
        return {};
    }

    /// A decimal number with the ending "UL" or without one.
    Result<std::size_t> number() {
        PANTILE_ASSIGN_OR_RETURN(const std::string_view word, next());
        std::size_t value = 0;
        const char* const end = word.data() + word.size();
        const auto [rest, status] = std::from_chars(word.data(), end, value);
        const std::string_view ending(rest, static_cast<std::size_t>(end - rest));
        if (status != std::errc() || (!ending.empty() && ending != "UL")) {
            return fault("has '" + core::excerpt(word) + "' where a number has to be");
        }
        return value;
    }

    /// "0x" and two hexadecimal digits.
    Result<std::uint8_t> byte() {
        PANTILE_ASSIGN_OR_RETURN(const std::string_view word, next());
        unsigned value = 0;
        const char* const end = word.data() + word.size();
        const bool shaped = word.size() == 4 && word.substr(0, 2) == "0x";
        if (!shaped || std::from_chars(word.data() + 2, end, value, 16).ptr != end) {
            return fault("has '" + core::excerpt(word) + "' where a byte has to be");
        }
        return static_cast<std::uint8_t>(value);
    }

    Result<void> expectEnd() {
        PANTILE_RETURN_IF_ERROR(skipBlanks());
        if (m_next == m_text.size()) return {};
        return fault("goes on after the load's end");
    }

    Error fault(const std::string& what) const {
        const auto upToHere = m_text.substr(0, m_next);
        const auto line = 1 + std::count(upToHere.begin(), upToHere.end(), '\n');
        return {ErrorKind::Corrupt, "line " + std::to_string(line) + " of the header " + what,
                "write the load again from the library"};
    }

private:
    static bool isBlank(char c) { return c == ' ' || c == '\t' || c == '\r' || c == '\n'; }

    static bool isWordCharacter(char c) {
        return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') ||
               c == '_' || c == '#' || c == '.';
    }

    Result<void> skipBlanks() {
        while (m_next < m_text.size()) {
            if (isBlank(m_text[m_next])) {
                ++m_next;
            } else if (m_text.substr(m_next, 2) == "/*") {
                const std::size_t end = m_text.find("*/", m_next + 2);
                if (end == std::string_view::npos) return fault("has a comment without an end");
                m_next = end + 2;
            } else {
                break;
            }
        }
        return {};
    }

    /// The next word: a run of letters, digits and their like, or one other character.
    Result<std::string_view> next() {
        PANTILE_RETURN_IF_ERROR(skipBlanks());
        if (m_next == m_text.size()) return fault("breaks off");
        const std::size_t start = m_next;
        ++m_next;
        if (isWordCharacter(m_text[start])) {
            while (m_next < m_text.size() && isWordCharacter(m_text[m_next])) ++m_next;
        }
        return m_text.substr(start, m_next - start);
    }

    std::string_view m_text;
    std::size_t m_next = 0;
};

}  // namespace

std::string writeHeader(std::span<const std::uint8_t> load, std::string_view name,
                        std::span<const std::string> titles) {
    const std::string count = std::to_string(load.size());
    return openingComment(name, titles) +
           "\n#ifndef PANTILE_LOAD_H\n"
           "#define PANTILE_LOAD_H\n\n"
           "#include <stdint.h>\n\n"
           "/* Where the compiler puts the load; such as an attribute for program memory. */\n"
           "#ifndef PANTILE_LOAD_PLACE\n"
           "#define PANTILE_LOAD_PLACE\n"
           "#endif\n\n"
           "#define PANTILE_LOAD_BYTES " +
           count + "UL\n\nstatic const uint8_t pantile_load[" + count + "] PANTILE_LOAD_PLACE = {" +
           arrayBody(load) + "\n};\n\n#endif\n";
}

Result<std::vector<std::uint8_t>> readHeader(std::string_view text) {
    constexpr std::array<std::string_view, 15> kOpening = {
        "#ifndef", "PANTILE_LOAD_H",     "#define", "PANTILE_LOAD_H", "#include",
        "<",       "stdint.h",           ">",       "#ifndef",        "PANTILE_LOAD_PLACE",
        "#define", "PANTILE_LOAD_PLACE", "#endif",  "#define",        "PANTILE_LOAD_BYTES"};
    constexpr std::array<std::string_view, 5> kBeforeSize = {"static", "const", "uint8_t",
                                                             "pantile_load", "["};
    constexpr std::array<std::string_view, 4> kAfterSize = {"]", "PANTILE_LOAD_PLACE", "=", "{"};
    Scanner scanner(text);
    PANTILE_RETURN_IF_ERROR(scanner.expectAll(kOpening));
    PANTILE_ASSIGN_OR_RETURN(const std::size_t count, scanner.number());
    PANTILE_RETURN_IF_ERROR(scanner.expectAll(kBeforeSize));
    PANTILE_ASSIGN_OR_RETURN(const std::size_t again, scanner.number());
    if (again != count) return scanner.fault("states two different sizes");
    // Each byte takes at least "0x00," of the text: a forged size cannot ask for more memory.
    constexpr std::size_t kLeastCharactersPerByte = 5;
    if (count > text.size() / kLeastCharactersPerByte || count > layout::kMaxLoadBytes) {
        return scanner.fault("states " + std::to_string(count) + " bytes, more than it can hold");
    }
    PANTILE_RETURN_IF_ERROR(scanner.expectAll(kAfterSize));
    std::vector<std::uint8_t> load;
    load.reserve(count);
    for (std::size_t i = 0; i < count; ++i) {
        PANTILE_ASSIGN_OR_RETURN(const std::uint8_t byte, scanner.byte());
        PANTILE_RETURN_IF_ERROR(scanner.expect(","));
        load.push_back(byte);
    }
    PANTILE_RETURN_IF_ERROR(scanner.expect("}"));
    PANTILE_RETURN_IF_ERROR(scanner.expect(";"));
    PANTILE_RETURN_IF_ERROR(scanner.expect("#endif"));
    PANTILE_RETURN_IF_ERROR(scanner.expectEnd());
    return load;
}

bool looksLikeHeader(std::span<const std::uint8_t> bytes) {
    return !bytes.empty() && (bytes[0] == '/' || bytes[0] == '#' || bytes[0] == ' ' ||
                              bytes[0] == '\n' || bytes[0] == '\r' || bytes[0] == '\t');
}

}  // namespace pantile::board
