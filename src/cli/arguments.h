#pragma once

// Command-line words, read against a table of what a command takes. There are no one-letter
// options: words such as "-night" are tag edits and parts of queries.

#include <array>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/result.h"

namespace pantile::cli {

enum class OptionKind {
    Flag,      ///< Stands alone.
    Value,     ///< Takes the next word, or what follows '='; not an empty one.
    Text,      ///< The same, and may be empty.
    Repeated,  ///< A Value that may stand more than once.
};

struct OptionSpec {
    std::string_view name;  ///< With its dashes: "--canvas".
    OptionKind kind = OptionKind::Flag;
    std::string_view placeholder;  ///< What the value is: "NAME", "area|nearest".
    std::string_view help;         ///< One line.
};

/// An option with its value (empty for a flag), as it stood among the words.
struct GivenOption {
    std::string_view name;  ///< From the OptionSpec.
    std::string value;
};

class Arguments {
public:
    /// Reads `words` against `options`. Everything that does not begin with "--" is positional, and
    /// so is everything after "--".
    /// Errors: Usage for an unknown option (with the nearest known one), an option without its
    /// value, a value where none belongs, or a second value where one belongs.
    static core::Result<Arguments> parse(std::span<const std::string> words,
                                         std::span<const OptionSpec> options);

    const std::vector<std::string>& positional() const { return m_positional; }

    bool has(std::string_view option) const { return m_values.contains(option); }

    std::optional<std::string> value(std::string_view option) const;
    std::vector<std::string> values(std::string_view option) const;

    /// All options in the order in which they were given.
    const std::vector<GivenOption>& inOrder() const { return m_inOrder; }

    /// The option's value as a whole number in least..most. Errors: Usage.
    core::Result<std::optional<long long>> number(std::string_view option, long long least,
                                                  long long most) const;

    /// The same, put into `field` if the option stands there.
    core::Result<void> readNumber(std::string_view option, long long least, long long most,
                                  int& field) const;

    /// The option's value as a decimal fraction in least..most. Errors: Usage.
    core::Result<std::optional<double>> fraction(std::string_view option, double least,
                                                 double most) const;

private:
    std::vector<std::string> m_positional;
    std::vector<GivenOption> m_inOrder;
    std::map<std::string, std::vector<std::string>, std::less<>> m_values;
};

/// The whole of `text` as a number. Errors: Usage naming `what`.
core::Result<long long> parseNumber(std::string_view what, std::string_view text, long long least,
                                    long long most);

/// What parseChoice fails with.
core::Error unknownChoice(std::string_view what, std::string_view word,
                          std::span<const std::string_view> choices);

template <typename T>
struct Choice {
    std::string_view word;
    T value;
};

/// The value of the choice called `word`. Errors: Usage naming `what` and all choices.
template <typename T, std::size_t N>
core::Result<T> parseChoice(std::string_view what, std::string_view word,
                            const std::array<Choice<T>, N>& choices) {
    std::vector<std::string_view> words;
    for (const Choice<T>& choice : choices) {
        if (choice.word == word) return choice.value;
        words.push_back(choice.word);
    }
    return unknownChoice(what, word, words);
}

}  // namespace pantile::cli
