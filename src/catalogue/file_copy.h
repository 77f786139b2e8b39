#pragma once

// Copies of database files by SQLite's backup interface, which sees whole transactions only, and
// names for copies beside them.

#include <cstddef>
#include <filesystem>
#include <string_view>
#include <utility>

#include "catalogue/connection.h"
#include "core/result.h"

namespace pantile::catalogue {

/// Makes `to` hold exactly what `from` holds, in one transaction of `to`.
core::Result<void> copyDatabase(Connection& from, Connection& to);

/// Makes the file `path`, which must not exist, a copy of `from`; it appears complete or not at
/// all. Errors: AlreadyExists; Io.
core::Result<void> copyToNewFile(Connection& from, const std::filesystem::path& path);

/// A file that is gone with this, and its side files: what is made whole before it takes a name.
class TemporaryFile {
public:
    explicit TemporaryFile(std::filesystem::path path) : m_path(std::move(path)) { remove(); }

    TemporaryFile(const TemporaryFile&) = delete;
    TemporaryFile& operator=(const TemporaryFile&) = delete;

    ~TemporaryFile() { remove(); }

    const std::filesystem::path& path() const { return m_path; }

private:
    void remove() const;

    std::filesystem::path m_path;
};

/// Errors: AlreadyExists.
core::Result<void> checkIsFree(const std::filesystem::path& path);

/// Errors: AlreadyExists, also if the file came this moment; Io.
core::Result<void> moveToNewName(const std::filesystem::path& from,
                                 const std::filesystem::path& to);

/// Of the copies that freeNameBeside named by `what` and numbers, deletes all but the `most` that
/// were written last.
void keepNewestBeside(const std::filesystem::path& path, std::string_view what, std::size_t most);

/// A file name beside `path` that is not taken: "library.db.version-1", "library.db.version-1-2".
std::filesystem::path freeNameBeside(const std::filesystem::path& path, std::string_view what);

}  // namespace pantile::catalogue
