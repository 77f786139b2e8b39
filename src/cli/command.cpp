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
