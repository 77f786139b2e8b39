#include "catalogue/file_copy.h"

#include <algorithm>
#include <functional>
#include <memory>
#include <string>
#include <system_error>
#include <utility>
#include <vector>

#include <sqlite3.h>

#include "catalogue/sqlite_error.h"

namespace pantile::catalogue {
namespace {

namespace fs = std::filesystem;
using core::Error;
using core::ErrorKind;
using core::Result;

Error alreadyThere(const fs::path& path) {
    return {ErrorKind::AlreadyExists, path.string() + " exists already",
            "choose another name; backup replaces it with --replace"};
}

}  // namespace

void TemporaryFile::remove() const {
    std::error_code ignored;
    for (const char* suffix : {"", "-journal", "-wal", "-shm"}) {
        fs::remove(m_path.string() + suffix, ignored);
    }
}

Result<void> checkIsFree(const fs::path& path) {
    std::error_code ignored;
    if (fs::exists(path, ignored)) return alreadyThere(path);
    return {};
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
    PANTILE_RETURN_IF_ERROR(checkIsFree(path));
    const TemporaryFile part(fs::path(path.string() + ".part"));
    {
        const auto to = Connection::open(part.path(), FileMode::ReadWriteOrCreate,
                                         std::chrono::milliseconds(0));
        if (!to) {
            return Error{ErrorKind::Io, path.string() + " cannot be written",
                         "check the path, and that you may write to its folder"};
        }
        PANTILE_RETURN_IF_ERROR(copyDatabase(from, **to));
    }
    return moveToNewName(part.path(), path);
}

namespace {

/// Whether the name is the stem and a number, or two with '-' between, as freeNameBeside makes
/// them.
bool isNumberedCopy(const std::string& name, const std::string& stem) {
    if (!name.starts_with(stem) || name.size() == stem.size()) return false;
    return name.find_first_not_of("0123456789-", stem.size()) == std::string::npos;
}

}  // namespace

void keepNewestBeside(const fs::path& path, std::string_view what, std::size_t most) {
    const std::string stem = path.filename().string() + "." + std::string(what);
    std::vector<std::pair<fs::file_time_type, fs::path>> copies;
    std::error_code ignored;
    for (const auto& file : fs::directory_iterator(fs::absolute(path).parent_path(), ignored)) {
        if (!isNumberedCopy(file.path().filename().string(), stem)) continue;
        copies.emplace_back(fs::last_write_time(file.path(), ignored), file.path());
    }
    std::sort(copies.begin(), copies.end(), std::greater<>());
    for (std::size_t i = most; i < copies.size(); ++i) fs::remove(copies[i].second, ignored);
}

fs::path freeNameBeside(const fs::path& path, std::string_view what) {
    const std::string stem = path.string() + "." + std::string(what);
    fs::path name = stem;
    for (int number = 2; fs::exists(name); ++number) name = stem + "-" + std::to_string(number);
    return name;
}

}  // namespace pantile::catalogue
