#pragma once

#include <stop_token>

namespace pantile::cli {

/// Turns Ctrl-C and a polite end of the process into a request to stop, so that work ends between
/// two textures and not inside one. A second one ends the program at once.
/// Threads: call it before any other thread is made, so that all of them leave the signals to it.
std::stop_token stopOnInterrupt();

}  // namespace pantile::cli
