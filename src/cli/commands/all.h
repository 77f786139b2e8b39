#pragma once

// One function for each command, in the order of the help.

#include "cli/command.h"

namespace pantile::cli {

Command addCommand();
Command findCommandSpec();
Command showCommand();
Command setCommand();
Command tagCommand();
Command tagsCommand();
Command shelfCommand();
Command searchCommand();
Command touchCommand();
Command seamsCommand();
Command similarCommand();
Command duplicatesCommand();
Command removeCommand();
Command recoverCommand();
Command historyCommand();
Command revertCommand();
Command undoCommand();
Command redoCommand();
Command purgeCommand();
Command codeCommand();
Command readCommand();
Command exportCommand();
Command paletteCommand();
Command canvasCommand();
Command boardCommand();
Command planCommand();
Command fitCommand();
Command loadCommand();
Command checkCommand();
Command backupCommand();
Command restoreCommand();
Command helpCommand();

}  // namespace pantile::cli
