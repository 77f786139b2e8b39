#pragma once

// The whole tool without a window, as a function: tests call it in their own process.

#include <iosfwd>
#include <stop_token>
#include <string>
#include <vector>

#include "cli/command.h"

namespace pantile::cli {

struct Streams {
    std::istream& in;
    std::ostream& out;
    std::ostream& err;
};

/// Runs the command line `words` (without the program's name).
/// Returns the exit code: 0 all done, 1 something was refused or failed, 2 wrong usage.
int runCli(const std::vector<std::string>& words, const Streams& streams, const Terminal& terminal,
           std::stop_token stop = {});

/// Whether the command line `words` may print a page, for which fonts have to be ready: a
/// QGuiApplication, which takes longer to begin than all other commands together.
bool printsAPage(const std::vector<std::string>& words);

}  // namespace pantile::cli
