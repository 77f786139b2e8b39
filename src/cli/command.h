#pragma once

// What a command of the command line is: its words for the help, its options, and a function.

#include <iosfwd>
#include <span>
#include <stop_token>
#include <string>
#include <string_view>
#include <vector>

#include "cli/arguments.h"
#include "core/progress.h"
#include "core/result.h"

namespace pantile::cli {

/// Where answers go and what may be done there.
struct Terminal {
    bool colour = false;       ///< Standard output takes colour.
    bool progressBar = false;  ///< Standard error is a terminal: a bar may be drawn there.
    int columns = 80;
};

/// What every command is handed beside its own words.
struct Session {
    std::istream& in;
    std::ostream& out;
    std::ostream& err;
    Terminal terminal;
    std::stop_token stop;
    std::string libraryPath;  ///< Chosen by --library, the environment or the default place.
    bool json = false;
    bool quiet = false;

    /// Warnings and news beside the answer; silent under --quiet.
    void say(std::string_view sentence) const;

    /// Progress on standard error where that is a terminal and --quiet is not set.
    core::Progress progress() const;
};

enum class Outcome {
    Done,
    SomeRefused,  ///< The rest was done, and what was not was said.
};

struct Command {
    std::string_view name;
    std::string_view summary;             ///< One line for the list of commands.
    std::vector<std::string_view> usage;  ///< What follows the name, one line for each way.
    std::vector<OptionSpec> options;
    std::string_view notes;  ///< More for its own help; may be empty.
    core::Result<Outcome> (*run)(Session&, const Arguments&);
    bool takesEmptyWords = false;  ///< An empty search finds all; elsewhere it is a slip.
};

/// All commands in the order of the help.
std::span<const Command> allCommands();

/// The command of that name, or nullptr.
const Command* findCommand(std::string_view name);

/// The error for a name that findCommand does not know, with the nearest that it does.
core::Error unknownCommand(std::string_view name);

/// What happened and what to do, as standard error shows it.
void printProblem(std::ostream& err, const core::Error& error);

/// The error for words that are no way to use a command that takes a word such as "add" or "list"
/// first: with the nearest such word, how the given one is used, or all there are.
core::Error wrongUse(std::string_view command, std::span<const std::string> words);

/// Errors: Usage, if there are fewer than `least` or more than `most` positional words.
core::Result<void> checkPositional(const Arguments& arguments, std::size_t least, std::size_t most,
                                   std::string_view expected);

}  // namespace pantile::cli
