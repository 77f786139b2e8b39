#include "keeping/failing_disk.h"

#include <memory>
#include <optional>

#include <gtest/gtest.h>
#include <sqlite3.h>

namespace pantile::tests {
namespace {

struct Plan {
    DiskFault fault = DiskFault::Write;
    std::int64_t stepsLeft = 0;
    bool hasCome = false;
};

// SQLite calls back without a place for data of ours that all its files share.
std::optional<Plan> s_plan;
sqlite3_vfs* s_system = nullptr;

/// Whether a step of one of these kinds fails now.
enum class Step { Read, Change, Growth };

bool isHitBy(DiskFault fault, Step step) {
    switch (fault) {
        case DiskFault::Read:
            return step == Step::Read;
        case DiskFault::Full:
            return step == Step::Growth;
        case DiskFault::Write:
        case DiskFault::Gone:
            return step != Step::Read;
    }
    return false;
}

bool fails(Step step) {
    if (!s_plan) return false;
    Plan& plan = *s_plan;
    if (plan.hasCome) {
        return plan.fault == DiskFault::Gone ||
               (plan.fault == DiskFault::Full && step == Step::Growth);
    }
    if (!isHitBy(plan.fault, step) || plan.stepsLeft-- > 0) return false;
    plan.hasCome = true;
    return true;
}

/// What SQLite holds of an open file: ours first, the system's behind it.
struct OpenFile {
    sqlite3_file base;
    sqlite3_file* system;
};

sqlite3_file* systemOf(sqlite3_file* file) {
    return reinterpret_cast<OpenFile*>(file)->system;
}

int closeFile(sqlite3_file* file) {
    return systemOf(file)->pMethods->xClose(systemOf(file));
}

int readFile(sqlite3_file* file, void* into, int amount, sqlite3_int64 offset) {
    if (fails(Step::Read)) return SQLITE_IOERR_READ;
    return systemOf(file)->pMethods->xRead(systemOf(file), into, amount, offset);
}

int writeFile(sqlite3_file* file, const void* from, int amount, sqlite3_int64 offset) {
    sqlite3_file* const system = systemOf(file);
    sqlite3_int64 size = 0;
    system->pMethods->xFileSize(system, &size);
    const bool wasGone = s_plan && s_plan->hasCome;
    if (fails(offset + amount > size ? Step::Growth : Step::Change)) {
        if (s_plan->fault == DiskFault::Full) return SQLITE_FULL;
        if (s_plan->fault == DiskFault::Gone && !wasGone) {
            system->pMethods->xWrite(system, from, amount / 2, offset);
        }
        return SQLITE_IOERR_WRITE;
    }
    return system->pMethods->xWrite(system, from, amount, offset);
}

int truncateFile(sqlite3_file* file, sqlite3_int64 size) {
    if (fails(Step::Change)) return SQLITE_IOERR_TRUNCATE;
    return systemOf(file)->pMethods->xTruncate(systemOf(file), size);
}

int syncFile(sqlite3_file* file, int flags) {
    if (fails(Step::Change)) return SQLITE_IOERR_FSYNC;
    return systemOf(file)->pMethods->xSync(systemOf(file), flags);
}

int fileSize(sqlite3_file* file, sqlite3_int64* size) {
    return systemOf(file)->pMethods->xFileSize(systemOf(file), size);
}

int lockFile(sqlite3_file* file, int level) {
    return systemOf(file)->pMethods->xLock(systemOf(file), level);
}

int unlockFile(sqlite3_file* file, int level) {
    return systemOf(file)->pMethods->xUnlock(systemOf(file), level);
}

int checkLock(sqlite3_file* file, int* held) {
    return systemOf(file)->pMethods->xCheckReservedLock(systemOf(file), held);
}

int controlFile(sqlite3_file* file, int operation, void* argument) {
    return systemOf(file)->pMethods->xFileControl(systemOf(file), operation, argument);
}

int sectorSize(sqlite3_file* file) {
    return systemOf(file)->pMethods->xSectorSize(systemOf(file));
}

int traitsOf(sqlite3_file* file) {
    return systemOf(file)->pMethods->xDeviceCharacteristics(systemOf(file));
}

int mapShared(sqlite3_file* file, int region, int size, int extend, void volatile** into) {
    if (extend != 0 && fails(Step::Growth)) return SQLITE_IOERR_SHMSIZE;
    return systemOf(file)->pMethods->xShmMap(systemOf(file), region, size, extend, into);
}

int lockShared(sqlite3_file* file, int offset, int count, int flags) {
    return systemOf(file)->pMethods->xShmLock(systemOf(file), offset, count, flags);
}

void barrier(sqlite3_file* file) {
    systemOf(file)->pMethods->xShmBarrier(systemOf(file));
}

int unmapShared(sqlite3_file* file, int deletes) {
    return systemOf(file)->pMethods->xShmUnmap(systemOf(file), deletes);
}

constexpr sqlite3_io_methods kMethods = {
    2,          closeFile,  readFile,    writeFile,   truncateFile, syncFile, fileSize,
    lockFile,   unlockFile, checkLock,   controlFile, sectorSize,   traitsOf, mapShared,
    lockShared, barrier,    unmapShared, nullptr,     nullptr};

int openFile(sqlite3_vfs* /*disk*/, const char* name, sqlite3_file* file, int flags,
             int* outFlags) {
    auto* const ours = reinterpret_cast<OpenFile*>(file);
    ours->base.pMethods = nullptr;
    ours->system = reinterpret_cast<sqlite3_file*>(ours + 1);
    const bool creates = (flags & SQLITE_OPEN_CREATE) != 0;
    if (creates && fails(Step::Growth)) return SQLITE_CANTOPEN;
    const int code = s_system->xOpen(s_system, name, ours->system, flags, outFlags);
    if (ours->system->pMethods != nullptr) ours->base.pMethods = &kMethods;
    return code;
}

int deleteFile(sqlite3_vfs* /*disk*/, const char* name, int syncs) {
    if (fails(Step::Change)) return SQLITE_IOERR_DELETE;
    return s_system->xDelete(s_system, name, syncs);
}

sqlite3_vfs s_disk;

}  // namespace

FailingDisk::FailingDisk() {
    s_system = sqlite3_vfs_find(nullptr);
    s_disk = *s_system;
    s_disk.pNext = nullptr;
    s_disk.zName = "failing disk";
    s_disk.szOsFile = static_cast<int>(sizeof(OpenFile)) + s_system->szOsFile;
    s_disk.xOpen = openFile;
    s_disk.xDelete = deleteFile;
    s_plan.reset();
    EXPECT_EQ(sqlite3_vfs_register(&s_disk, 1), SQLITE_OK);
}

FailingDisk::~FailingDisk() {
    sqlite3_vfs_unregister(&s_disk);
    sqlite3_vfs_register(s_system, 1);
}

void FailingDisk::failAt(DiskFault fault, std::int64_t step) {
    s_plan = Plan{fault, step, false};
}

bool FailingDisk::heal() {
    const bool hadCome = s_plan && s_plan->hasCome;
    s_plan.reset();
    return hadCome;
}

}  // namespace pantile::tests
