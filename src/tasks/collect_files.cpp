#include "tasks/collect_files.h"

#include <algorithm>

namespace pantile::tasks {

using core::Error;
using core::ErrorKind;
using core::Result;

namespace fs = std::filesystem;

namespace {

void collectFrom(const fs::path& folder, FoundFiles& found) {
    std::error_code problem;
    fs::directory_iterator entries(folder, problem);
    while (!problem && entries != fs::directory_iterator()) {
        const fs::directory_entry& entry = *entries;
        std::error_code unknown;
        const bool isHidden = entry.path().filename().string().starts_with('.');
        const bool isFolder = !entry.is_symlink(unknown) && entry.is_directory(unknown);
        if (!isHidden && isFolder) {
            collectFrom(entry.path(), found);
        } else if (!isHidden && entry.is_regular_file(unknown)) {
            found.files.push_back({entry.path(), true});
        }
        entries.increment(problem);
    }
    if (!problem) return;
    found.unread.push_back(
        {folder,
         {ErrorKind::Io, folder.string() + " cannot be read: " + problem.message(),
          "look at the rights of the folder"}});
}

}  // namespace

Result<FoundFiles> collectFiles(const fs::path& path) {
    std::error_code problem;
    const fs::file_status status = fs::status(path, problem);
    if (!fs::exists(status)) {
        return Error{ErrorKind::NotFound, path.string() + " is not there",
                     "check the spelling of its path"};
    }
    if (!fs::is_directory(status)) return FoundFiles{{{path, false}}, {}};
    FoundFiles found;
    collectFrom(path, found);
    std::sort(found.files.begin(), found.files.end(),
              [](const FoundFile& a, const FoundFile& b) { return a.path < b.path; });
    return found;
}

}  // namespace pantile::tasks
