#pragma once

// Copies of database files by SQLite's backup interface, which sees whole transactions only, and
// names for copies beside them.

#include <filesystem>
#include <string_view>

#include "catalogue/connection.h"
#include "core/result.h"

namespace pantile::catalogue {

/// Makes `to` hold exactly what `from` holds, in one transaction of `to`.
core::Result<void> copyDatabase(Connection& from, Connection& to);

/// Makes the file `path`, which must not exist, a copy of `from`; it appears complete or not at
/// all. Errors: AlreadyExists; Io.
core::Result<void> copyToNewFile(Connection& from, const std::filesystem::path& path);

/// A file name beside `path` that is not taken: "library.db.version-1", "library.db.version-1-2".
std::filesystem::path freeNameBeside(const std::filesystem::path& path, std::string_view what);

}  // namespace pantile::catalogue
