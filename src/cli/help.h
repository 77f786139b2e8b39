#pragma once

#include <iosfwd>
#include <span>
#include <string_view>

#include "cli/command.h"

namespace pantile::cli {

/// What the program is for, in lines of less than 90 columns.
inline constexpr std::string_view kJob =
    "Pantile keeps a game maker's textures: it turns pictures into grids of palette indices,\n"
    "keeps and finds them, shares them as short text codes, and writes the load from which a\n"
    "small USB board draws them in the toolkit.";

/// The options that stand before or after any command.
std::span<const OptionSpec> globalOptions();

/// What `pantile help` prints: the job, the commands, the options for all of them.
void printOverview(std::ostream& out);

/// What `pantile help COMMAND` prints.
void printCommandHelp(std::ostream& out, const Command& command);

}  // namespace pantile::cli
