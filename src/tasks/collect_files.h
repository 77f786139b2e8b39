#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "core/result.h"

namespace pantile::tasks {

struct FoundFile {
    std::filesystem::path path;
    bool insideFolder = false;  ///< Found by reading through a folder, not named by the user.
};

/// The file itself, or all files in a folder and those below it, sorted by path; hidden ones and
/// links to folders are passed over. Errors: NotFound; Io if a folder cannot be read.
core::Result<std::vector<FoundFile>> collectFiles(const std::filesystem::path& path);

}  // namespace pantile::tasks
