#pragma once

#include <iosfwd>

#include "cli/command.h"

namespace pantile::cli {

/// The options that stand before or after any command.
std::span<const OptionSpec> globalOptions();

/// What `pantile help` prints: the job, the commands, the options for all of them.
void printOverview(std::ostream& out);

/// What `pantile help COMMAND` prints.
void printCommandHelp(std::ostream& out, const Command& command);

}  // namespace pantile::cli
