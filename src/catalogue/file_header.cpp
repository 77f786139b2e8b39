#include "catalogue/file_header.h"

#include <array>
#include <cstring>
#include <fstream>
#include <string>

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

    std::ifstream file(path, std::ios::binary);
    if (!file) {
        return Error{ErrorKind::Io, "the library cannot be read",
                     "check that you may read the file"};
    }
    Header header = {};
    file.read(header.data(), header.size());
    if (file.gcount() == 0) return HeaderState::Missing;
    if (header[0] == '{') {
        return Error{ErrorKind::InvalidInput, "this is no SQLite file",
                     "a library as JSON is taken in by 'pantile add'"};
    }
    const bool whole = file.gcount() == static_cast<std::streamsize>(header.size());
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
