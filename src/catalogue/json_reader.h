#pragma once

// Reads JSON (RFC 8259) from anywhere, piece by piece: whoever reads says what has to stand next,
// so that neither depth nor length of what comes is trusted, and a file of any size takes the
// memory of its longest text. Of the values there are texts, null and whole numbers.

#include <cstddef>
#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "core/result.h"

namespace pantile::catalogue {

/// null, a whole number or a text.
using JsonValue = std::variant<std::monostate, std::int64_t, std::string>;

/// Fills the front of what it is given; gives how much, 0 at the end.
using ByteSource = std::function<core::Result<std::size_t>(char* into, std::size_t most)>;

inline constexpr std::size_t kMaxJsonTextBytes = 65536;

/// The largest whole number that every reader of JSON keeps exactly (RFC 8259, section 6).
inline constexpr std::int64_t kMaxJsonNumber = (std::int64_t{1} << 53U) - 1;

/// All functions fail with InvalidInput, TooLarge (a text of more than kMaxJsonTextBytes, a number
/// beyond kMaxJsonNumber) or what the source says, line and column in front. After an error it is
/// of no more use.
class JsonReader {
public:
    explicit JsonReader(ByteSource source);

    core::Result<void> openObject();
    core::Result<void> openList();

    /// Goes to the next member of the object opened last, up to its value. Nothing at its end,
    /// which is then behind.
    core::Result<std::optional<std::string>> nextMember();

    /// Goes to the next value of the list opened last. False at its end, which is then behind.
    core::Result<bool> nextElement();

    core::Result<JsonValue> value();
    core::Result<std::string> text();
    core::Result<std::int64_t> number();

    /// Nothing but blanks may follow.
    core::Result<void> end();

    /// The line that is being read, from 1.
    std::int64_t line() const { return m_line; }

    core::Error errorHere(std::string message, std::string hint = {}) const;

private:
    static constexpr int kEnd = -1;

    int peek();
    int take();
    void fill();
    core::Result<void> skipBlanks();
    core::Result<void> expect(char c, std::string_view what);
    core::Result<bool> nextIn(char closing, std::string_view what);
    core::Result<void> word(std::string_view all);
    core::Result<void> escape(std::string& text);
    core::Result<char32_t> fourHexDigits();
    core::Error tooLarge(std::string message) const;
    core::Error unexpected(std::string_view what);

    ByteSource m_source;
    std::vector<char> m_buffer;
    std::size_t m_at = 0;
    std::size_t m_filled = 0;
    std::int64_t m_line = 1;
    std::int64_t m_column = 1;
    std::optional<core::Error> m_failure;  ///< Of the source.
    std::vector<bool> m_isFirst;           ///< Of each open object or list.
};

}  // namespace pantile::catalogue
