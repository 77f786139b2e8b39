#include "cli/interrupt.h"

#include <csignal>
#include <thread>
#include <unistd.h>

namespace pantile::cli {

std::stop_token stopOnInterrupt() {
    sigset_t signals;
    sigemptyset(&signals);
    sigaddset(&signals, SIGINT);
    sigaddset(&signals, SIGTERM);
    pthread_sigmask(SIG_BLOCK, &signals, nullptr);
    std::stop_source stop;
    // Detached: it waits for signals until the process ends, and owns all that it uses.
    std::thread([signals, stop]() mutable {
        for (int signal = 0; sigwait(&signals, &signal) == 0;) {
            if (!stop.request_stop()) _exit(128 + signal);
        }
    }).detach();
    return stop.get_token();
}

}  // namespace pantile::cli
