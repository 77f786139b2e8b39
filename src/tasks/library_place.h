#pragma once

// Where the library is, and how it is opened: made on first use, with the shipped canvases and
// boards.

#include <filesystem>
#include <string>

#include "catalogue/library.h"
#include "core/result.h"

namespace pantile::tasks {

/// $PANTILE_LIBRARY, else library.db in the account's data folder.
std::string defaultLibraryPath();

enum class Purpose {
    Look,  ///< Works on a read-only file too.
    Change,
};

/// How this program opens libraries.
catalogue::OpenOptions openOptions(Purpose purpose);

/// Errors: as catalogue::Library::open.
core::Result<catalogue::Library> openLibrary(const std::filesystem::path& path, Purpose purpose);

}  // namespace pantile::tasks
