#include "catalogue/file_copy.h"

#include <memory>
#include <string>
#include <system_error>

#include <sqlite3.h>

#include "catalogue/sqlite_error.h"

namespace pantile::catalogue {
namespace {

namespace fs = std::filesystem;
using core::Error;
using core::ErrorKind;
using core::Result;

// Takes away a half-made copy and its side files, whatever way the copying ends.
class TemporaryFile {
public:
    explicit TemporaryFile(fs::path path) : m_path(std::move(path)) { remove(); }

    TemporaryFile(const TemporaryFile&) = delete;
    TemporaryFile& operator=(const TemporaryFile&) = delete;

    ~TemporaryFile() { remove(); }

    const fs::path& path() const { return m_path; }

private:
    void remove() const {
        std::error_code ignored;
        for (const char* suffix : {"", "-journal", "-wal", "-shm"}) {
            fs::remove(m_path.string() + suffix, ignored);
        }
    }

    fs::path m_path;
};

Error alreadyThere(const fs::path& path) {
    return {ErrorKind::AlreadyExists, path.string() + " exists already",
            "choose another name, or ask for it to be replaced"};
}

// A hard link fails where a file is already, so nothing is overwritten even if it came this moment.
// File systems without links get a rename.
Result<void> moveToNewName(const fs::path& from, const fs::path& to) {
    std::error_code failure;
    fs::create_hard_link(from, to, failure);
    if (!failure) return {};
    if (failure == std::errc::file_exists || fs::exists(to)) return alreadyThere(to);
    fs::rename(from, to, failure);
    if (!failure) return {};
    return Error{ErrorKind::Io, to.string() + " cannot be written: " + failure.message(),
                 "check the path, and that you may write to its folder"};
}

}  // namespace

Result<void> copyDatabase(Connection& from, Connection& to) {
    const std::unique_ptr<sqlite3_backup, int (*)(sqlite3_backup*)> backup(
        sqlite3_backup_init(to.handle(), "main", from.handle(), "main"), sqlite3_backup_finish);
    if (!backup) return to.error(sqlite3_extended_errcode(to.handle()));
    // All pages in one step: the source is locked for reading only, which keeps nobody waiting.
    int code = sqlite3_backup_step(backup.get(), -1);
    constexpr int kWaitMs = 20;
    for (int waitedMs = 0; (code == SQLITE_BUSY || code == SQLITE_LOCKED) && waitedMs < 5000;
         waitedMs += kWaitMs) {
        sqlite3_sleep(kWaitMs);
        code = sqlite3_backup_step(backup.get(), -1);
    }
    if (code == SQLITE_DONE) return {};
    return to.error(code);
}

Result<void> copyToNewFile(Connection& from, const fs::path& path) {
    std::error_code ignored;
    if (fs::exists(path, ignored)) return alreadyThere(path);
    const TemporaryFile part(fs::path(path.string() + ".part"));
    {
        PANTILE_ASSIGN_OR_RETURN(const auto to,
                                 Connection::open(part.path(), FileMode::ReadWriteOrCreate,
                                                  std::chrono::milliseconds(0)));
        PANTILE_RETURN_IF_ERROR(copyDatabase(from, *to));
    }
    return moveToNewName(part.path(), path);
}

fs::path freeNameBeside(const fs::path& path, std::string_view what) {
    const std::string stem = path.string() + "." + std::string(what);
    fs::path name = stem;
    for (int number = 2; fs::exists(name); ++number) name = stem + "-" + std::to_string(number);
    return name;
}

}  // namespace pantile::catalogue
