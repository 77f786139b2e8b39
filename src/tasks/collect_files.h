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

struct UnreadFolder {
    std::filesystem::path path;
    core::Error error;
};

struct FoundFiles {
    std::vector<FoundFile> files;      ///< Sorted by path.
    std::vector<UnreadFolder> unread;  ///< What is in them is not among the files.
};

/// The file itself, or all files in a folder and those below it; hidden ones and links to folders
/// are passed over. Errors: NotFound.
core::Result<FoundFiles> collectFiles(const std::filesystem::path& path);

}  // namespace pantile::tasks
