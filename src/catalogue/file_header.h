#pragma once

// The first bytes of a database file, read before SQLite opens it as one, so that a foreign or
// newer file is refused before anything touches it.
// Source: SQLite documentation, 'Database File Format', section 1.3.

#include <cstdint>
#include <filesystem>

#include "core/result.h"

namespace pantile::catalogue {

enum class HeaderState {
    Missing,  ///< No file, or one without a byte.
    Blank,    ///< SQLite's, without an application id: perhaps a library that is being made.
    Library,
};

/// Errors: InvalidInput if the file is a folder, no SQLite file or another application's;
/// Unsupported if its version is above `newestVersion`; Io if it cannot be read.
core::Result<HeaderState> readFileHeader(const std::filesystem::path& path, int newestVersion);

}  // namespace pantile::catalogue
