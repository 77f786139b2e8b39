#include "catalogue/open_files.h"

#include <algorithm>
#include <mutex>
#include <system_error>
#include <vector>

namespace pantile::catalogue {
namespace {

namespace fs = std::filesystem;

struct OpenFiles {
    std::mutex mutex;
    std::vector<fs::path> paths;  ///< One for each time that it is open.
};

OpenFiles& openFiles() {
    static OpenFiles files;
    return files;
}

}  // namespace

OpenFile::OpenFile(const fs::path& path) : m_path(path) {
    OpenFiles& files = openFiles();
    const std::lock_guard lock(files.mutex);
    files.paths.push_back(m_path);
}

OpenFile::~OpenFile() {
    OpenFiles& files = openFiles();
    const std::lock_guard lock(files.mutex);
    files.paths.erase(std::find(files.paths.begin(), files.paths.end(), m_path));
}

bool isPartOf(const fs::path& path, const fs::path& library) {
    for (const char* part : {"", "-wal", "-shm"}) {
        std::error_code problem;
        if (fs::equivalent(path, library.string() + part, problem)) return true;
    }
    return false;
}

bool isPartOfAnOpenLibrary(const fs::path& path) {
    OpenFiles& files = openFiles();
    const std::lock_guard lock(files.mutex);
    return std::any_of(files.paths.begin(), files.paths.end(),
                       [&](const fs::path& library) { return isPartOf(path, library); });
}

}  // namespace pantile::catalogue
