#include "cli/run_cli.h"

#include <algorithm>
#include <ostream>

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

// Every line of a hint is set in by as much: some draw a mark below a place in the line above.
std::string indented(std::string_view text) {
    std::string lines = "  ";
    for (const char c : text) lines += c == '\n' ? std::string("\n  ") : std::string(1, c);
    return lines;
}

void printError(const Session& session, const Error& error) {
    constexpr auto kAllowed = core::LineBreaks::Allowed;
    if (session.json) printJson(session.out, jsonError(error));
    session.err << "pantile: " << core::visibleText(error.message, kAllowed) << '\n';
    if (error.hint.empty()) return;
    session.err << indented(core::visibleText(error.hint, kAllowed)) << '\n';
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
        error.hint += "; 'pantile help " + std::string(command->name) + "' says more";
        return error;
    }
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
    const Result<Outcome> outcome = runCommand(session, split, *global);
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
