#include "cli/help.h"

#include <algorithm>
#include <ostream>

#include "cli/commands/all.h"

namespace pantile::cli {

using core::Result;

namespace {

bool takesVerb(const Command& command, const std::vector<std::string>& words) {
    return words.size() > 1 &&
           std::any_of(command.usage.begin(), command.usage.end(), [&](std::string_view usage) {
               return usage.substr(0, usage.find(' ')) == words[1];
           });
}

Result<Outcome> runHelp(Session& session, const Arguments& arguments) {
    if (arguments.positional().empty()) {
        printOverview(session.out);
        return Outcome::Done;
    }
    const std::string& name = arguments.positional().front();
    const Command* command = findCommand(name);
    if (command == nullptr) return unknownCommand(name);
    // "help load make" asks for the help of load, which explains make.
    const std::size_t most = takesVerb(*command, arguments.positional()) ? 2 : 1;
    PANTILE_RETURN_IF_ERROR(checkPositional(arguments, 0, most, "help or help COMMAND"));
    printCommandHelp(session.out, *command);
    return Outcome::Done;
}

}  // namespace

Command helpCommand() {
    return {"help", "Explains the commands.", {"[COMMAND]"}, {}, "", runHelp};
}

}  // namespace pantile::cli
