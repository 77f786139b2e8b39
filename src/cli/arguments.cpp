#include "cli/arguments.h"

#include <algorithm>
#include <charconv>
#include <cstddef>
#include <limits>

#include "core/nearest_word.h"
#include "core/text.h"

namespace pantile::cli {

using core::Error;
using core::ErrorKind;
using core::Result;

namespace {

const OptionSpec* findOption(std::span<const OptionSpec> options, std::string_view name) {
    const auto found = std::find_if(options.begin(), options.end(),
                                    [&](const OptionSpec& option) { return option.name == name; });
    return found == options.end() ? nullptr : &*found;
}

Error unknownOption(std::string_view name, std::span<const OptionSpec> options) {
    std::vector<std::string_view> known;
    for (const OptionSpec& option : options) known.push_back(option.name);
    return {ErrorKind::Usage, "there is no option " + core::excerpt(name) + " here",
            core::didYouMean(name, known, "words that begin with '--' go after '--'")};
}

Error missingValue(const OptionSpec& option) {
    return {ErrorKind::Usage, std::string(option.name) + " needs a value",
            "write " + std::string(option.name) + " " + std::string(option.placeholder)};
}

}  // namespace

Result<Arguments> Arguments::parse(std::span<const std::string> words,
                                   std::span<const OptionSpec> options) {
    Arguments arguments;
    for (std::size_t i = 0; i < words.size(); ++i) {
        const std::string_view word = words[i];
        if (word == "--") {
            arguments.m_positional.insert(arguments.m_positional.end(),
                                          words.begin() + static_cast<std::ptrdiff_t>(i) + 1,
                                          words.end());
            break;
        }
        if (!word.starts_with("--")) {
            arguments.m_positional.emplace_back(word);
            continue;
        }
        const std::size_t equals = word.find('=');
        const std::string_view name = word.substr(0, equals);
        const OptionSpec* option = findOption(options, name);
        if (option == nullptr) return unknownOption(name, options);
        std::vector<std::string>& values = arguments.m_values[std::string(name)];
        if (option->kind == OptionKind::Flag) {
            if (equals != std::string_view::npos) {
                return Error{ErrorKind::Usage, std::string(name) + " takes no value",
                             "write " + std::string(name) + " alone"};
            }
            arguments.m_inOrder.push_back({option->name, {}});
            continue;
        }
        if (option->kind != OptionKind::Repeated && !values.empty()) {
            return Error{ErrorKind::Usage, std::string(name) + " stands twice", "give it once"};
        }
        if (equals != std::string_view::npos) {
            values.emplace_back(word.substr(equals + 1));
        } else if (i + 1 < words.size()) {
            values.push_back(words[++i]);
        } else {
            return missingValue(*option);
        }
        if (option->kind != OptionKind::Text && values.back().empty()) return missingValue(*option);
        arguments.m_inOrder.push_back({option->name, values.back()});
    }
    return arguments;
}

std::optional<std::string> Arguments::value(std::string_view option) const {
    const auto found = m_values.find(option);
    if (found == m_values.end() || found->second.empty()) return std::nullopt;
    return found->second.front();
}

std::vector<std::string> Arguments::values(std::string_view option) const {
    const auto found = m_values.find(option);
    return found == m_values.end() ? std::vector<std::string>{} : found->second;
}

Result<long long> parseNumber(std::string_view what, std::string_view text, long long least,
                              long long most) {
    long long number = 0;
    const auto [end, problem] = std::from_chars(text.data(), text.data() + text.size(), number);
    const bool whole = problem == std::errc() && end == text.data() + text.size();
    if (whole && number >= least && number <= most) return number;
    const bool isBounded = most < std::numeric_limits<long long>::max();
    return Error{ErrorKind::Usage, std::string(what) + " cannot be '" + core::excerpt(text) + "'",
                 isBounded ? "give a whole number from " + std::to_string(least) + " to " +
                                 std::to_string(most)
                           : "give a whole number, " + std::to_string(least) + " or more"};
}

Error unknownChoice(std::string_view what, std::string_view word,
                    std::span<const std::string_view> choices) {
    std::string all;
    for (const std::string_view choice : choices) {
        all += (all.empty() ? "" : ", ") + std::string(choice);
    }
    return {ErrorKind::Usage, std::string(what) + " cannot be '" + core::excerpt(word) + "'",
            "choose one of: " + all};
}

Result<std::optional<long long>> Arguments::number(std::string_view option, long long least,
                                                   long long most) const {
    const auto text = value(option);
    if (!text) return std::optional<long long>();
    PANTILE_ASSIGN_OR_RETURN(const long long parsed, parseNumber(option, *text, least, most));
    return std::optional<long long>(parsed);
}

Result<void> Arguments::readNumber(std::string_view option, long long least, long long most,
                                   int& field) const {
    PANTILE_ASSIGN_OR_RETURN(const auto parsed, number(option, least, most));
    if (parsed) field = static_cast<int>(*parsed);
    return {};
}

Result<std::optional<double>> Arguments::fraction(std::string_view option, double least,
                                                  double most) const {
    const auto text = value(option);
    if (!text) return std::optional<double>();
    double parsed = 0;
    const auto [end, problem] = std::from_chars(text->data(), text->data() + text->size(), parsed);
    const bool whole = problem == std::errc() && end == text->data() + text->size();
    if (whole && parsed >= least && parsed <= most) return std::optional<double>(parsed);
    const auto shortForm = [](double number) {
        std::string digits = std::to_string(number);
        digits.erase(digits.find_last_not_of('0') + 1);
        if (digits.back() == '.') digits.pop_back();
        return digits;
    };
    return Error{ErrorKind::Usage,
                 std::string(option) + " cannot be '" + core::excerpt(*text) + "'",
                 "give a number from " + shortForm(least) + " to " + shortForm(most)};
}

}  // namespace pantile::cli
