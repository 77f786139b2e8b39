#include "cli/help.h"

#include <ostream>

#include "cli/commands/all.h"

namespace pantile::cli {

using core::Result;

namespace {

Result<Outcome> runHelp(Session& session, const Arguments& arguments) {
    PANTILE_RETURN_IF_ERROR(checkPositional(arguments, 0, 1, "help or help COMMAND"));
    if (arguments.positional().empty()) {
        printOverview(session.out);
        return Outcome::Done;
    }
    const std::string& name = arguments.positional().front();
    const Command* command = findCommand(name);
    if (command == nullptr) return unknownCommand(name);
    printCommandHelp(session.out, *command);
    return Outcome::Done;
}

}  // namespace

Command helpCommand() {
    return {"help", "Explains the commands.", {"[COMMAND]"}, {}, "", runHelp};
}

}  // namespace pantile::cli
