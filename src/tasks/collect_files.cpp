#include "tasks/collect_files.h"

#include <algorithm>

namespace pantile::tasks {

using core::Error;
using core::ErrorKind;
using core::Result;

namespace fs = std::filesystem;

Result<std::vector<FoundFile>> collectFiles(const fs::path& path) {
    std::error_code problem;
    const fs::file_status status = fs::status(path, problem);
    if (!fs::exists(status)) {
        return Error{ErrorKind::NotFound, path.string() + " is not there",
                     "check the spelling of its path"};
    }
    if (!fs::is_directory(status)) return std::vector<FoundFile>{{path, false}};

    std::vector<FoundFile> files;
    fs::recursive_directory_iterator entries(path, problem);
    while (!problem && entries != fs::recursive_directory_iterator()) {
        const bool hidden = entries->path().filename().string().starts_with('.');
        if (hidden) {
            entries.disable_recursion_pending();
        } else if (entries->is_regular_file(problem)) {
            files.push_back({entries->path(), true});
        }
        entries.increment(problem);
    }
    if (problem) {
        return Error{
            ErrorKind::Io,
            "the folder " + path.string() + " cannot be read through: " + problem.message(),
            "look at the rights of the folders in it"};
    }
    std::sort(files.begin(), files.end(),
              [](const FoundFile& a, const FoundFile& b) { return a.path < b.path; });
    return files;
}

}  // namespace pantile::tasks
