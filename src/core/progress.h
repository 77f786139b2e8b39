#pragma once

// What long work is handed: a way to ask it to stop and a way for it to tell how far it is.

#include <cstdint>
#include <functional>
#include <stop_token>
#include <string_view>

#include "core/error.h"

namespace pantile::core {

struct Progress {
    std::stop_token stop;
    /// Called with items done, items in all, and what is being worked on. May be empty.
    std::function<void(std::int64_t done, std::int64_t total, std::string_view what)> report;

    bool stopRequested() const { return stop.stop_requested(); }

    void tell(std::int64_t done, std::int64_t total, std::string_view what) const {
        if (report) report(done, total, what);
    }
};

/// What work returns that was asked to stop.
inline Error stoppedError() {
    return {ErrorKind::Cancelled, "stopped before the end", "what was finished before stays"};
}

}  // namespace pantile::core
