#pragma once

// A disk that fails when it is told to, between SQLite and the system. While one of these lives, it
// is what SQLite opens files through.

#include <cstdint>

namespace pantile::tests {

enum class DiskFault {
    Write,  ///< One write, sync, truncation, creation or deletion fails.
    Read,   ///< One read fails.
    Full,   ///< From some write on, no file grows.
    Gone,   ///< A write stops half-way, and nothing works from then on.
};

class FailingDisk {
public:
    FailingDisk();
    FailingDisk(const FailingDisk&) = delete;
    FailingDisk& operator=(const FailingDisk&) = delete;
    ~FailingDisk();

    /// The fault comes at the step of that number, from 0; steps are what such a fault may hit.
    static void failAt(DiskFault fault, std::int64_t step);

    /// All is well again. Gives whether the fault had come.
    static bool heal();
};

}  // namespace pantile::tests
