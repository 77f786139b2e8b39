#include "cli/run_cli.h"

#include <algorithm>
#include <filesystem>
#include <ostream>

#include "catalogue/open_files.h"
#include "cli/help.h"
#include "cli/json.h"
#include "core/text.h"
#include "tasks/library_place.h"

namespace pantile::cli {

using core::Error;
using core::ErrorKind;
using core::Result;

namespace {

constexpr int kAllDone = 0;
constexpr int kRefused = 1;
constexpr int kWrongUsage = 2;

int exitCodeFor(const Error& error) {
    return error.kind == ErrorKind::Usage ? kWrongUsage : kRefused;
}

// The words split at the command: options for all commands may stand on either side of it.
struct SplitWords {
    std::vector<std::string> global;
    std::string command;
    std::vector<std::string> rest;
};

bool isGlobal(std::string_view word) {
    for (const OptionSpec& option : globalOptions()) {
        if (word.substr(0, word.find('=')) == option.name) return true;
    }
    return false;
}

SplitWords splitWords(const std::vector<std::string>& words) {
    SplitWords split;
    bool optionsEnded = false;
    for (std::size_t i = 0; i < words.size(); ++i) {
        const std::string& word = words[i];
        if (!optionsEnded && isGlobal(word)) {
            split.global.push_back(word);
            if (word == "--library" && i + 1 < words.size()) split.global.push_back(words[++i]);
            continue;
        }
        if (word == "--") optionsEnded = true;
        if (split.command.empty()) {
            split.command = word;
        } else {
            split.rest.push_back(word);
        }
    }
    return split;
}

// Of the library's file; 0 if it is not there or holds nothing.
std::uintmax_t sizeOf(const std::string& path) {
    std::error_code problem;
    const std::uintmax_t bytes = std::filesystem::file_size(path, problem);
    return problem ? 0 : bytes;
}

void printError(const Session& session, const Error& error) {
    if (session.json) printJson(session.out, jsonError(error));
    printProblem(session.err, error);
}

// Whatever --replace may replace, it is not the library itself.
Result<void> checkSparesLibrary(const Session& session, const Arguments& arguments) {
    if (!arguments.has("--replace")) return {};
    for (const GivenOption& option : arguments.inOrder()) {
        if (!catalogue::isPartOf(option.value, session.libraryPath)) continue;
        return Error{ErrorKind::Usage, core::excerpt(option.value) + " is the library itself",
                     "choose another name"};
    }
    return {};
}

// What a shell hands over for a variable that is not set.
Result<void> checkNoEmptyWord(const Arguments& arguments) {
    const auto& words = arguments.positional();
    if (std::find(words.begin(), words.end(), "") == words.end()) return {};
    return Error{ErrorKind::Usage, "one of the words is empty",
                 "if it stands for a variable, look whether that is set; all textures are 'all'"};
}

Result<Outcome> runCommand(Session& session, const SplitWords& split, const Arguments& global) {
    if (global.has("--version")) {
        session.out << "pantile " << PANTILE_VERSION << '\n';
        return Outcome::Done;
    }
    const bool wantsHelp = global.has("--help");
    if (split.command.empty()) {
        if (!wantsHelp) {
            return Error{ErrorKind::Usage, "no command was given",
                         "'pantile help' lists the commands"};
        }
        printOverview(session.out);
        return Outcome::Done;
    }
    const Command* command = findCommand(split.command);
    if (command == nullptr) return unknownCommand(split.command);
    if (wantsHelp) {
        printCommandHelp(session.out, *command);
        return Outcome::Done;
    }
    auto arguments = Arguments::parse(split.rest, command->options);
    if (!arguments) {
        Error error = arguments.error();
        error.hint += (error.hint.ends_with('?') ? " " : "; ") +
                      ("'pantile help " + std::string(command->name) + "' says more");
        return error;
    }
    PANTILE_RETURN_IF_ERROR(checkSparesLibrary(session, *arguments));
    if (!command->takesEmptyWords) PANTILE_RETURN_IF_ERROR(checkNoEmptyWord(*arguments));
    return command->run(session, *arguments);
}

}  // namespace

int runCli(const std::vector<std::string>& words, const Streams& streams, const Terminal& terminal,
           std::stop_token stop) {
    const SplitWords split = splitWords(words);
    Session session{streams.in,      streams.out, streams.err, terminal,
                    std::move(stop), {},          false,       false};
    const auto global = Arguments::parse(split.global, globalOptions());
    if (!global) {
        printError(session, global.error());
        return kWrongUsage;
    }
    session.json = global->has("--json");
    session.quiet = global->has("--quiet");
    session.libraryPath = global->value("--library").value_or(tasks::defaultLibraryPath());
    const std::uintmax_t bytesBefore = sizeOf(session.libraryPath);
    const Result<Outcome> outcome = runCommand(session, split, *global);
    if (bytesBefore == 0 && sizeOf(session.libraryPath) > 0)
        session.say("A new library was made: " + core::visibleText(session.libraryPath));
    if (!outcome) {
        printError(session, outcome.error());
        return exitCodeFor(outcome.error());
    }
    return *outcome == Outcome::Done ? kAllDone : kRefused;
}

bool printsAPage(const std::vector<std::string>& words) {
    const SplitWords split = splitWords(words);
    return split.command == "load" &&
           std::find(split.rest.begin(), split.rest.end(), "print") != split.rest.end();
}

}  // namespace pantile::cli
