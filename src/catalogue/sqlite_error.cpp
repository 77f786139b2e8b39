#include "catalogue/sqlite_error.h"

#include <sqlite3.h>

namespace pantile::catalogue {
namespace {

using core::Error;
using core::ErrorKind;

constexpr int kPrimaryCodeMask = 0xFF;

// SQLite knows a full disk by the system's own word for it. A quota, or a limit on the size of
// files, is a failed write to it.
bool isFailedWrite(int code) {
    return code == SQLITE_IOERR_WRITE || code == SQLITE_IOERR_SHMSIZE || code == SQLITE_IOERR_FSYNC;
}

std::string detail(sqlite3* handle, int code) {
    return handle != nullptr ? sqlite3_errmsg(handle) : sqlite3_errstr(code);
}

}  // namespace

Error readOnlyError() {
    return {ErrorKind::Io, "the library is read-only",
            "allow writing to the file and its folder, or work on a copy"};
}

Error corruptError(const std::string& what) {
    return {ErrorKind::Corrupt, what + " is damaged",
            "save what can be read with 'pantile check --repair FILE', or restore a backup"};
}

Error sqliteError(sqlite3* handle, int code) {
    if (isFailedWrite(code)) {
        return {
            ErrorKind::Io, "the library could not be written: the disk is full or failed",
            "free some space or check the disk, and try again; nothing of this change was kept"};
    }
    switch (code & kPrimaryCodeMask) {
        case SQLITE_FULL:
            return {ErrorKind::Io, "the disk is full",
                    "free some space, or back up to another disk; nothing of this change was kept"};
        case SQLITE_BUSY:
        case SQLITE_LOCKED:
            return {ErrorKind::Busy, "another program is writing to the library",
                    "close the other program, or wait until it has finished, and try again"};
        case SQLITE_IOERR:
            return {ErrorKind::Io, "the disk failed: " + detail(handle, code),
                    "check the disk or the network drive that the library lies on"};
        case SQLITE_READONLY:
            return readOnlyError();
        case SQLITE_CANTOPEN:
        case SQLITE_PERM:
        case SQLITE_AUTH:
            return {ErrorKind::Io, "the library cannot be opened: " + detail(handle, code),
                    "check the path, and that you may read and write the file and its folder"};
        case SQLITE_NOTADB:
            return {ErrorKind::InvalidInput, "this is no SQLite file",
                    "give the path of a library made by this program"};
        case SQLITE_CORRUPT:
            return corruptError("the library");
        case SQLITE_INTERRUPT:
            return {ErrorKind::Cancelled, "it was stopped", ""};
        case SQLITE_TOOBIG:
            return {ErrorKind::TooLarge, "a value is too large for the library", "shorten it"};
        case SQLITE_SCHEMA:
        case SQLITE_MISMATCH:
            return corruptError("the library's table layout");
        default:
            return {ErrorKind::Internal, "the library refused: " + detail(handle, code),
                    "'pantile check' looks through the library; a backup can be restored"};
    }
}

}  // namespace pantile::catalogue
