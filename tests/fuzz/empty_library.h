#pragma once

// Empty libraries in a folder that goes with the program.

#include <cstdlib>
#include <filesystem>
#include <string>
#include <system_error>

#include "catalogue/library.h"
#include "fuzz/checking.h"

namespace pantile::fuzz {

class ScratchFolder {
public:
    ScratchFolder() {
        std::string name = (std::filesystem::temp_directory_path() / "pantile-XXXXXX").string();
        require(mkdtemp(name.data()) != nullptr, "there is room for a folder");
        m_path = name;
    }

    ScratchFolder(const ScratchFolder&) = delete;
    ScratchFolder& operator=(const ScratchFolder&) = delete;

    ~ScratchFolder() {
        std::error_code ignored;
        std::filesystem::remove_all(m_path, ignored);
    }

    const std::filesystem::path& path() const { return m_path; }

private:
    std::filesystem::path m_path;
};

/// Of that name; its texts are searched as they are.
inline catalogue::Library emptyLibrary(const std::string& name) {
    static const ScratchFolder folder;
    catalogue::OpenOptions options;
    options.folding = {"as it is", [](std::string_view text) { return std::string(text); }};
    options.now = [] { return std::int64_t{1767268800}; };
    return *catalogue::Library::open(folder.path() / name, options);
}

}  // namespace pantile::fuzz
