#pragma once

// Reading and writing whole files, with limits on the one side and without half files on the other.

#include <cstdint>
#include <filesystem>
#include <functional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/result.h"

namespace pantile::tasks {

enum class IfExists {
    Refuse,
    Replace,
};

/// Writes all of `bytes` or nothing: readers see the old file or the new one, never a part.
/// Errors: AlreadyExists under Refuse; InvalidInput for a path that is not UTF-8 or a file of a
/// library that is open here; NotFound without its folder; Io if the folder or the disk does not
/// let it.
core::Result<void> writeFile(const std::filesystem::path& path, std::span<const std::uint8_t> bytes,
                             IfExists ifExists);
core::Result<void> writeFile(const std::filesystem::path& path, std::string_view text,
                             IfExists ifExists);

/// Takes the next piece of a file.
using PieceSink = std::function<core::Result<void>(std::string_view)>;

/// The same, for what `produce` hands over piece by piece. Errors: those of `produce` too.
core::Result<void> writeFile(const std::filesystem::path& path, IfExists ifExists,
                             const std::function<core::Result<void>(const PieceSink&)>& produce);

/// Before many files are written: errors AlreadyExists, naming it, if one is there and may not be
/// replaced.
core::Result<void> checkFree(const std::vector<std::filesystem::path>& files, IfExists ifExists);

/// Errors: NotFound, InvalidInput for a folder, a path that is not UTF-8 or a file of a library
/// that is open here, Io, or TooLarge before reading more than `mostBytes`.
core::Result<std::string> readFile(const std::filesystem::path& path, std::uint64_t mostBytes);

/// Makes the folder and those above it. Errors: InvalidInput for a path that is not UTF-8; Io,
/// also where a file stands in the way.
core::Result<void> makeFolder(const std::filesystem::path& folder);

}  // namespace pantile::tasks
