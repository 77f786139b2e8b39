#pragma once

// What the place Edit lets run off the window's thread: what a texture costs, how an operation
// would change it, and keeping it.

#include <cstdint>
#include <filesystem>
#include <optional>
#include <string>

#include "catalogue/texture_row.h"
#include "core/ids.h"
#include "core/progress.h"
#include "core/result.h"
#include "picture/seam_check.h"
#include "tasks/touch_operations.h"

namespace pantile::desktop {

struct WorkFigures {
    std::optional<catalogue::Estimate> estimate;  ///< None if no canvas takes the texture.
    std::int64_t codeCharacters = 0;
    picture::SeamCheck seams;
};

/// Errors: Cancelled; errors of the library.
core::Result<WorkFigures> workFigures(const std::filesystem::path& libraryPath,
                                      const core::Texture& texture, const core::Progress& progress);

/// The texture after the operation. Errors: as tasks::touched.
core::Result<core::Texture> tryOperation(const std::filesystem::path& libraryPath,
                                         const core::Texture& texture,
                                         const tasks::TouchOperation& operation);

struct KeepRequest {
    std::filesystem::path libraryPath;
    core::TextureId id;
    core::Texture before;  ///< As it was in the library.
    core::Texture after;
};

struct KeptWork {
    core::TextureId id;  ///< Where it is now.
    /// The library had another texture there by now, or none: it is one of its own.
    bool isBeside = false;
};

/// Keeps `after` as a revision of the texture; if that is not `before` any more, was removed or
/// is not there, as a texture of its own, so that nothing is lost.
/// Errors: AlreadyExists if another texture has that picture; Io, also if the library is gone;
/// Busy, Corrupt.
core::Result<KeptWork> keepWork(const KeepRequest& request);

}  // namespace pantile::desktop
