#pragma once

// All of a library as one JSON file, and back: docs/library-file.md.

#include <cstdint>
#include <filesystem>
#include <functional>
#include <string_view>

#include "catalogue/json_reader.h"
#include "catalogue/library.h"
#include "core/progress.h"
#include "core/result.h"
#include "core/texture.h"
#include "tasks/files.h"

namespace pantile::tasks {

inline constexpr std::string_view kLibraryFileName = "library.json";

/// So much of a file's beginning tells whether it is one.
inline constexpr std::size_t kLibraryFileHeadBytes = 256;

bool isLibraryFile(std::string_view beginning);

/// Whether the file can be read and is one.
bool isLibraryFileAt(const std::filesystem::path& path);

/// Reads the file piece by piece.
catalogue::ByteSource fileSource(const std::filesystem::path& path);

/// `text` must live as long as it is read.
catalogue::ByteSource textSource(std::string_view text);

/// Writes kLibraryFileName into `folder`, which is made if missing; gives the path. Errors:
/// AlreadyExists under Refuse; Corrupt; Cancelled; Io.
core::Result<std::filesystem::path> exportLibrary(const catalogue::Library& library,
                                                  const std::filesystem::path& folder,
                                                  IfExists ifExists,
                                                  const core::Progress& progress = {});

/// Whether nothing was done to the library since it was made: a library file becomes the whole of
/// it.
core::Result<bool> isNewLibrary(const catalogue::Library& library);

/// A texture of a library file with what else goes with it into a library that holds others.
struct FiledTexture {
    core::Texture texture;
    int stars = 0;
    std::vector<std::string> shelves;
};

/// Checks all of the file, then calls `take` with every texture in it that is not removed, by
/// rising ids. For that it makes a library beside `library`, which is gone in the end. Errors: as
/// catalogue::readLibraryFile; those of `take`.
core::Result<void> forEachFiledTexture(
    const catalogue::Library& library, catalogue::ByteSource source,
    const std::function<core::Result<void>(const FiledTexture&)>& take,
    const core::Progress& progress = {});

}  // namespace pantile::tasks
