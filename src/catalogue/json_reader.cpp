#include "catalogue/json_reader.h"

#include "core/text.h"

namespace pantile::catalogue {
namespace {

using core::Error;
using core::ErrorKind;
using core::Result;

constexpr std::size_t kBufferBytes = 65536;

void appendUtf8(std::string& text, char32_t c) {
    constexpr char32_t kTail = 0x3F;
    const auto add = [&](char32_t byte) {
        text += static_cast<char>(static_cast<unsigned char>(byte));
    };
    if (c < 0x80) {
        add(c);
    } else if (c < 0x800) {
        add(0xC0 | (c >> 6U));
        add(0x80 | (c & kTail));
    } else if (c < 0x10000) {
        add(0xE0 | (c >> 12U));
        add(0x80 | ((c >> 6U) & kTail));
        add(0x80 | (c & kTail));
    } else {
        add(0xF0 | (c >> 18U));
        add(0x80 | ((c >> 12U) & kTail));
        add(0x80 | ((c >> 6U) & kTail));
        add(0x80 | (c & kTail));
    }
}

bool isDigit(int c) {
    return c >= '0' && c <= '9';
}

}  // namespace

JsonReader::JsonReader(ByteSource source) : m_source(std::move(source)), m_buffer(kBufferBytes) {
    // RFC 8259, section 8.1: a mark of the byte order may be passed over.
    constexpr std::string_view kMark = "\xEF\xBB\xBF";
    fill();
    if (std::string_view(m_buffer.data(), m_filled).starts_with(kMark)) m_at = kMark.size();
}

void JsonReader::fill() {
    m_at = 0;
    m_filled = 0;
    while (!m_failure && m_filled < m_buffer.size()) {
        const auto read = m_source(m_buffer.data() + m_filled, m_buffer.size() - m_filled);
        if (!read) m_failure = read.error();
        if (!read || *read == 0) return;
        m_filled += *read;
    }
}

int JsonReader::peek() {
    if (m_at == m_filled) fill();
    if (m_filled == 0) return kEnd;
    return static_cast<unsigned char>(m_buffer[m_at]);
}

int JsonReader::take() {
    const int c = peek();
    if (c == kEnd) return c;
    ++m_at;
    const bool continues = (static_cast<unsigned>(c) & 0xC0U) == 0x80U;
    if (c == '\n') {
        ++m_line;
        m_column = 1;
    } else if (!continues) {
        ++m_column;
    }
    return c;
}

Error JsonReader::errorHere(std::string message, std::string hint) const {
    if (m_failure) return *m_failure;
    return Error{ErrorKind::InvalidInput, std::move(message), std::move(hint)}.at(
        "line " + std::to_string(m_line) + ", column " + std::to_string(m_column));
}

Error JsonReader::tooLarge(std::string message) const {
    Error error = errorHere(std::move(message));
    if (!m_failure) error.kind = ErrorKind::TooLarge;
    return error;
}

Error JsonReader::unexpected(std::string_view what) {
    const int c = peek();
    std::string found = "the file ends";
    if (c != kEnd) {
        const bool isPlain = c > ' ' && c < 0x7F;
        found = isPlain ? "'" + std::string(1, static_cast<char>(c)) + "' stands"
                        : std::string("something else stands");
    }
    return errorHere(found + " where " + std::string(what) + " has to stand");
}

Result<void> JsonReader::skipBlanks() {
    for (int c = peek(); c == ' ' || c == '\n' || c == '\r' || c == '\t'; c = peek()) take();
    if (m_failure) return *m_failure;
    return {};
}

Result<void> JsonReader::expect(char c, std::string_view what) {
    PANTILE_RETURN_IF_ERROR(skipBlanks());
    if (peek() != c) return unexpected(what);
    take();
    return {};
}

Result<void> JsonReader::openObject() {
    PANTILE_RETURN_IF_ERROR(expect('{', "an object in { }"));
    m_isFirst.push_back(true);
    return {};
}

Result<void> JsonReader::openList() {
    PANTILE_RETURN_IF_ERROR(expect('[', "a list in [ ]"));
    m_isFirst.push_back(true);
    return {};
}

Result<bool> JsonReader::nextIn(char closing, std::string_view what) {
    PANTILE_RETURN_IF_ERROR(skipBlanks());
    if (peek() == closing) {
        take();
        m_isFirst.pop_back();
        return false;
    }
    if (!m_isFirst.back()) PANTILE_RETURN_IF_ERROR(expect(',', what));
    m_isFirst.back() = false;
    return true;
}

Result<std::optional<std::string>> JsonReader::nextMember() {
    using Member = std::optional<std::string>;
    PANTILE_ASSIGN_OR_RETURN(const bool more, nextIn('}', "a comma or a closing brace"));
    if (!more) return Member();
    PANTILE_ASSIGN_OR_RETURN(std::string name, text());
    PANTILE_RETURN_IF_ERROR(expect(':', "a colon"));
    return Member(std::move(name));
}

Result<bool> JsonReader::nextElement() {
    return nextIn(']', "a comma or a closing bracket");
}

Result<JsonValue> JsonReader::value() {
    PANTILE_RETURN_IF_ERROR(skipBlanks());
    const int c = peek();
    if (c == 'n') {
        PANTILE_RETURN_IF_ERROR(word("null"));
        return JsonValue();
    }
    if (c == '"') {
        PANTILE_ASSIGN_OR_RETURN(std::string read, text());
        return JsonValue(std::move(read));
    }
    if (c != '-' && !isDigit(c)) return unexpected("a text, a whole number or null");
    PANTILE_ASSIGN_OR_RETURN(const std::int64_t read, number());
    return JsonValue(read);
}

Result<void> JsonReader::word(std::string_view all) {
    for (const char c : all) {
        if (peek() != c) return unexpected("'" + std::string(all) + "'");
        take();
    }
    return {};
}

Result<std::int64_t> JsonReader::number() {
    PANTILE_RETURN_IF_ERROR(skipBlanks());
    const bool isNegative = peek() == '-';
    if (isNegative) take();
    if (!isDigit(peek())) return unexpected("a whole number");
    const bool isZero = peek() == '0';
    std::int64_t number = take() - '0';
    if (isZero && isDigit(peek())) return errorHere("a number begins with 0");
    for (; isDigit(peek()); take()) {
        number = number * 10 + (peek() - '0');
        if (number > kMaxJsonNumber) return tooLarge("a number is beyond 2^53");
    }
    const int behind = peek();
    if (behind == '.' || behind == 'e' || behind == 'E') {
        return errorHere("the number is no whole one", "write it without point and exponent");
    }
    return isNegative ? -number : number;
}

Result<std::string> JsonReader::text() {
    constexpr int kFirstPrintable = 0x20;
    PANTILE_RETURN_IF_ERROR(expect('"', "a text in quotes"));
    std::string text;
    for (;;) {
        const int c = peek();
        if (c == kEnd) return unexpected("a closing quote");
        if (c < kFirstPrintable) {
            return errorHere("a text has a line break or another control character in it",
                             "write it as \\n or \\u000a");
        }
        take();
        if (c == '"') break;
        if (c == '\\') {
            PANTILE_RETURN_IF_ERROR(escape(text));
        } else {
            text += static_cast<char>(c);
        }
        if (text.size() > kMaxJsonTextBytes) {
            return tooLarge("a text is longer than " + std::to_string(kMaxJsonTextBytes) +
                            " bytes");
        }
    }
    if (!core::isValidUtf8(text)) return errorHere("a text is no UTF-8", "save the file as UTF-8");
    return text;
}

Result<char32_t> JsonReader::fourHexDigits() {
    char32_t value = 0;
    for (int i = 0; i < 4; ++i) {
        const int c = peek();
        const int lower = c >= 'A' && c <= 'F' ? c - 'A' + 'a' : c;
        const bool isLetter = lower >= 'a' && lower <= 'f';
        if (!isLetter && !isDigit(c)) return unexpected("a hexadecimal digit");
        take();
        value = value * 16 + static_cast<char32_t>(isLetter ? lower - 'a' + 10 : c - '0');
    }
    return value;
}

Result<void> JsonReader::escape(std::string& text) {
    constexpr std::string_view kLetters = "\"\\/bfnrt";
    constexpr std::string_view kMeant = "\"\\/\b\f\n\r\t";
    const int c = peek();
    const std::size_t place = c == kEnd ? kLetters.npos : kLetters.find(static_cast<char>(c));
    if (place != kLetters.npos) {
        take();
        text += kMeant[place];
        return {};
    }
    if (c != 'u') return unexpected("a letter that follows a backslash in JSON");
    take();
    PANTILE_ASSIGN_OR_RETURN(char32_t character, fourHexDigits());
    const bool isFirstHalf = character >= 0xD800 && character < 0xDC00;
    if (isFirstHalf) {
        PANTILE_RETURN_IF_ERROR(word("\\u"));
        PANTILE_ASSIGN_OR_RETURN(const char32_t half, fourHexDigits());
        if (half < 0xDC00 || half > 0xDFFF) return errorHere("half a character stands alone");
        character = 0x10000 + ((character - 0xD800) << 10U) + (half - 0xDC00);
    } else if (character >= 0xDC00 && character <= 0xDFFF) {
        return errorHere("half a character stands alone");
    }
    appendUtf8(text, character);
    return {};
}

Result<void> JsonReader::end() {
    PANTILE_RETURN_IF_ERROR(skipBlanks());
    if (peek() != kEnd) return unexpected("the end of the file");
    return {};
}

}  // namespace pantile::catalogue
