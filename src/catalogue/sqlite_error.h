#pragma once

// What SQLite's result codes mean to a user.
// Source: SQLite documentation, 'Result and Error Codes'.

#include <string>

#include "core/error.h"

struct sqlite3;

namespace pantile::catalogue {

/// The error for the extended result `code`. `handle`, which may be null, tells the details of the
/// last failure.
core::Error sqliteError(sqlite3* handle, int code);

core::Error readOnlyError();

/// `what` says which part is damaged: "the tag list".
core::Error corruptError(const std::string& what);

}  // namespace pantile::catalogue
