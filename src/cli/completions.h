#pragma once

#include <iosfwd>

namespace pantile::cli {

/// Scripts that complete the words of pantile in a shell, made of the table of commands.
void writeBashCompletion(std::ostream& out);
void writeZshCompletion(std::ostream& out);
void writeFishCompletion(std::ostream& out);

}  // namespace pantile::cli
