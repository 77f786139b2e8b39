#include "catalogue/rescue_file.h"

#include <algorithm>
#include <array>
#include <cerrno>
#include <cstdint>
#include <fstream>
#include <string>
#include <string_view>
#include <system_error>

namespace pantile::catalogue {
namespace {

namespace fs = std::filesystem;
using core::Error;
using core::ErrorKind;
using core::Result;

constexpr std::size_t kBlock = 4096;
using Block = std::array<char, kBlock>;

/// Source: SQLite documentation, 'Database File Format', section 1.3.
void mendHeader(Block& first) {
    constexpr std::string_view kMagic("SQLite format 3\0", 16);
    constexpr std::string_view kPageSizeAndShares("\x10\0\2\2\0\x40\x20\x20", 8);
    constexpr std::string_view kUtf8("\0\0\0\1", 4);
    constexpr std::string_view kApplication = "PTLE";
    std::copy(kMagic.begin(), kMagic.end(), first.begin());
    std::copy(kPageSizeAndShares.begin(), kPageSizeAndShares.end(), first.begin() + 16);
    constexpr std::string_view kSchemaFormat("\0\0\0\4", 4);
    std::copy(kSchemaFormat.begin(), kSchemaFormat.end(), first.begin() + 44);
    std::fill(first.begin() + 52, first.begin() + 56, '\0');
    std::copy(kUtf8.begin(), kUtf8.end(), first.begin() + 56);
    std::copy(kApplication.begin(), kApplication.end(), first.begin() + 68);
}

Result<void> copyBlocks(const fs::path& from, const fs::path& to, bool isDatabase) {
    std::error_code failure;
    const auto size = fs::file_size(from, failure);
    if (failure) {
        return Error{ErrorKind::NotFound, from.string() + " cannot be read: " + failure.message(),
                     "check the path, and that you may read the file"};
    }
    std::ifstream in(from, std::ios::binary);
    std::ofstream out(to, std::ios::binary | std::ios::trunc);
    for (std::uintmax_t at = 0; at < size; at += kBlock) {
        Block block = {};
        const auto bytes =
            static_cast<std::streamsize>(std::min<std::uintmax_t>(kBlock, size - at));
        in.clear();
        in.seekg(static_cast<std::streamoff>(at));
        if (!in.read(block.data(), bytes)) block = {};
        if (isDatabase && at == 0) mendHeader(block);
        // A database ends with a whole page.
        out.write(block.data(), isDatabase ? static_cast<std::streamsize>(kBlock) : bytes);
    }
    if (out.flush()) return {};
    const std::string why = std::generic_category().message(errno);
    return Error{ErrorKind::Io, to.string() + ", to read from, was not written: " + why,
                 "free some space, or choose another place for the new file"};
}

}  // namespace

Result<void> copyToReadFrom(const fs::path& damaged, const fs::path& copy) {
    PANTILE_RETURN_IF_ERROR(copyBlocks(damaged, copy, true));
    const fs::path log = damaged.string() + "-wal";
    std::error_code ignored;
    if (!fs::exists(log, ignored)) return {};
    return copyBlocks(log, copy.string() + "-wal", false);
}

}  // namespace pantile::catalogue
