#include "cli/commands/all.h"

namespace pantile::cli {

std::span<const Command> allCommands() {
    static const std::vector<Command> kCommands = {
        addCommand(),     findCommandSpec(),   showCommand(),    setCommand(),     tagCommand(),
        tagsCommand(),    shelfCommand(),      searchCommand(),  touchCommand(),   seamsCommand(),
        similarCommand(), duplicatesCommand(), removeCommand(),  recoverCommand(), historyCommand(),
        revertCommand(),  undoCommand(),       redoCommand(),    purgeCommand(),   codeCommand(),
        readCommand(),    exportCommand(),     paletteCommand(), canvasCommand(),  boardCommand(),
        planCommand(),    fitCommand(),        loadCommand(),    checkCommand(),   backupCommand(),
        restoreCommand(), helpCommand(),
    };
    return kCommands;
}

}  // namespace pantile::cli
