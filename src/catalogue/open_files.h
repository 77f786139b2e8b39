#pragma once

// Files that SQLite has open in this process. Nothing else here may open one of them: the system
// takes all locks that a process has on a file away, SQLite's too, as soon as the process closes
// that file once (https://www.sqlite.org/howtocorrupt.html, 2.2).

#include <filesystem>

namespace pantile::catalogue {

/// Counts a library's file as open, as long as it lives. Threads: any.
class OpenFile {
public:
    explicit OpenFile(const std::filesystem::path& path);
    OpenFile(const OpenFile&) = delete;
    OpenFile& operator=(const OpenFile&) = delete;
    ~OpenFile();

private:
    std::filesystem::path m_path;
};

/// Whether `path` is the library's file or one that SQLite keeps beside it.
bool isPartOf(const std::filesystem::path& path, const std::filesystem::path& library);

/// The same for any library that is open in this process.
bool isPartOfAnOpenLibrary(const std::filesystem::path& path);

}  // namespace pantile::catalogue
