#include "cli/command.h"

#include <algorithm>
#include <ostream>

#include "cli/commands/all.h"
#include "cli/help.h"
#include "cli/progress_bar.h"
#include "core/nearest_word.h"
#include "core/text.h"

namespace pantile::cli {

void Session::say(std::string_view sentence) const {
    if (!quiet) err << sentence << '\n';
}

core::Progress Session::progress() const {
    core::Progress progress{stop, {}};
    if (terminal.progressBar && !quiet) progress.report = progressBar(err, terminal.columns);
    return progress;
}

const Command* findCommand(std::string_view name) {
    const auto commands = allCommands();
    const auto found = std::find_if(commands.begin(), commands.end(),
                                    [&](const Command& command) { return command.name == name; });
    return found == commands.end() ? nullptr : &*found;
}

core::Error unknownCommand(std::string_view name) {
    std::vector<std::string_view> known;
    if (name.starts_with('-')) {
        for (const OptionSpec& option : globalOptions()) known.push_back(option.name);
        return {core::ErrorKind::Usage, "there is no option '" + core::excerpt(name) + "'",
                core::didYouMean(name, known, "'pantile --help' says what there is")};
    }
    for (const Command& command : allCommands()) known.push_back(command.name);
    return {core::ErrorKind::Usage, "there is no command '" + core::excerpt(name) + "'",
            core::didYouMean(name, known, "'pantile help' lists the commands")};
}

void printProblem(std::ostream& err, const core::Error& error) {
    constexpr auto kAllowed = core::LineBreaks::Allowed;
    err << "pantile: " << core::visibleText(error.message, kAllowed) << '\n';
    if (error.hint.empty()) return;
    // Every line of a hint is set in by as much: some draw a mark below a place in the line above.
    err << "  ";
    for (const char c : core::visibleText(error.hint, kAllowed)) {
        err << c;
        if (c == '\n') err << "  ";
    }
    err << '\n';
}

namespace {

std::string_view firstWord(std::string_view usage) {
    return usage.substr(0, usage.find(' '));
}

/// "write load list", or "write load list, load show NAME or load remove NAME".
std::string waysToUse(const Command& command, const std::vector<std::string_view>& usages) {
    std::string text = "write ";
    for (std::size_t i = 0; i < usages.size(); ++i) {
        if (i > 0) text += i + 1 == usages.size() ? " or " : ", ";
        text += std::string(command.name) + " " + std::string(usages[i]);
    }
    return text;
}

}  // namespace

core::Error wrongUse(std::string_view name, std::span<const std::string> words) {
    const Command& command = *findCommand(name);
    const std::string_view verb = words.empty() ? std::string_view{} : words.front();
    std::vector<std::string_view> verbs;
    std::vector<std::string_view> ofVerb;
    for (const std::string_view usage : command.usage) {
        if (firstWord(usage) == verb) ofVerb.push_back(usage);
        if (verbs.empty() || verbs.back() != firstWord(usage)) verbs.push_back(firstWord(usage));
    }
    const std::string called(name);
    if (!ofVerb.empty()) {
        return {core::ErrorKind::Usage, "this is no way to use " + called + " " + std::string(verb),
                waysToUse(command, ofVerb)};
    }
    const std::string all = waysToUse(command, verbs) + "; 'pantile help " + called + "' says more";
    if (words.empty()) return {core::ErrorKind::Usage, called + " alone says too little", all};
    const auto nearest = core::nearestWord(verb, verbs);
    return {core::ErrorKind::Usage, "there is no '" + called + " " + core::excerpt(verb) + "'",
            nearest ? "did you mean " + called + " " + std::string(*nearest) + "?" : all};
}

core::Result<void> checkPositional(const Arguments& arguments, std::size_t least, std::size_t most,
                                   std::string_view expected) {
    const auto& words = arguments.positional();
    if (words.size() < least) {
        return core::Error{core::ErrorKind::Usage, "something is missing",
                           "write " + std::string(expected)};
    }
    if (words.size() > most) {
        return core::Error{core::ErrorKind::Usage,
                           "'" + core::excerpt(words[most]) + "' is one word too many",
                           "write " + std::string(expected)};
    }
    return {};
}

}  // namespace pantile::cli
