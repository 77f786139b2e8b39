#include "catalogue/file_header.h"

#include <algorithm>
#include <array>
#include <cstddef>
#include <cstring>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include <sqlite3.h>

#include "catalogue/migrations.h"

namespace pantile::catalogue {
namespace {

namespace fs = std::filesystem;
using core::Error;
using core::ErrorKind;
using core::Result;

constexpr std::size_t kHeaderBytes = 100;
constexpr std::size_t kVersionOffset = 60;
constexpr std::size_t kApplicationOffset = 68;
constexpr std::array<char, 16> kMagic = {'S', 'Q', 'L', 'i', 't', 'e', ' ', 'f',
                                         'o', 'r', 'm', 'a', 't', ' ', '3', '\0'};

using Header = std::array<char, kHeaderBytes>;

/// A file read through SQLite's own layer. Where a program closes a file by itself, the system
/// takes the locks away that SQLite has on it for the program's connections; SQLite's layer knows
/// of them. Source: SQLite documentation, 'How To Corrupt An SQLite Database File', section 2.2.
class SqliteFile {
public:
    explicit SqliteFile(const fs::path& path)
        : m_name(sqlite3_create_filename(path.c_str(), "", "", 0, nullptr), sqlite3_free_filename) {
        sqlite3_vfs* const system = sqlite3_vfs_find(nullptr);
        m_place.resize(static_cast<std::size_t>(system->szOsFile) / sizeof(std::max_align_t) + 1);
        m_isOpen = system->xOpen(system, m_name.get(), file(),
                                 SQLITE_OPEN_READONLY | SQLITE_OPEN_MAIN_DB, nullptr) == SQLITE_OK;
    }

    SqliteFile(const SqliteFile&) = delete;
    SqliteFile& operator=(const SqliteFile&) = delete;
    SqliteFile(SqliteFile&&) = delete;
    SqliteFile& operator=(SqliteFile&&) = delete;

    ~SqliteFile() {
        if (file()->pMethods != nullptr) file()->pMethods->xClose(file());
    }

    /// The bytes that it begins with, as many as `into` takes; nothing if it cannot be read.
    std::optional<std::size_t> readBegin(Header& into) {
        sqlite3_int64 size = 0;
        if (!m_isOpen || file()->pMethods->xFileSize(file(), &size) != SQLITE_OK) return {};
        const auto count = std::min<sqlite3_int64>(size, std::ssize(into));
        const int code = file()->pMethods->xRead(file(), into.data(), static_cast<int>(count), 0);
        if (code != SQLITE_OK) return {};
        return static_cast<std::size_t>(count);
    }

private:
    sqlite3_file* file() { return reinterpret_cast<sqlite3_file*>(m_place.data()); }

    std::unique_ptr<const char, void (*)(const char*)> m_name;
    std::vector<std::max_align_t> m_place;  ///< Of which SQLite makes its file; all zero at first.
    bool m_isOpen = false;
};

std::int32_t bigEndian(const Header& header, std::size_t offset) {
    std::uint32_t value = 0;
    for (std::size_t i = 0; i < 4; ++i) {
        value = (value << 8U) | static_cast<unsigned char>(header[offset + i]);
    }
    return static_cast<std::int32_t>(value);
}

Error noLibrary(const std::string& what) {
    return {ErrorKind::InvalidInput, what, "give the path of a library made by this program"};
}

}  // namespace

Result<HeaderState> readFileHeader(const fs::path& path, int newestVersion) {
    std::error_code failure;
    const fs::file_status status = fs::status(path, failure);
    if (status.type() == fs::file_type::not_found) return HeaderState::Missing;
    if (failure) {
        return Error{ErrorKind::Io, "the library cannot be reached: " + failure.message(),
                     "check the path, and that you may read its folder"};
    }
    if (status.type() != fs::file_type::regular) return noLibrary("this is no file");

    Header header = {};
    const std::optional<std::size_t> count = SqliteFile(path).readBegin(header);
    if (!count) {
        return Error{ErrorKind::Io, "the library cannot be read",
                     "check that you may read the file"};
    }
    if (*count == 0) return HeaderState::Missing;
    if (header[0] == '{') {
        return Error{ErrorKind::InvalidInput, "this is no SQLite file",
                     "a library as JSON is taken in by 'pantile add'"};
    }
    const bool whole = *count == header.size();
    if (!whole || std::memcmp(header.data(), kMagic.data(), kMagic.size()) != 0) {
        return noLibrary("this is no SQLite file");
    }
    const std::int32_t application = bigEndian(header, kApplicationOffset);
    if (application == 0) return HeaderState::Blank;
    if (application != kApplicationId) return noLibrary("this SQLite file is no Pantile library");
    const std::int32_t version = bigEndian(header, kVersionOffset);
    if (version > newestVersion) {
        return newerVersionError(version, newestVersion);
    }
    return HeaderState::Library;
}

}  // namespace pantile::catalogue
