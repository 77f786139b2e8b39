#pragma once

// What the place Edit lets run off the window's thread: what a texture costs, how an operation
// would change it, and keeping it.

#include <cstdint>
#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "catalogue/texture_row.h"
#include "core/progress.h"
#include "core/result.h"
#include "picture/seam_check.h"
#include "tasks/touch_operations.h"
#include "tasks/unkept_work.h"

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

/// Errors: as tasks::keepWork; Io also if the library is gone.
core::Result<tasks::KeptWork> keepInLibrary(const std::filesystem::path& libraryPath,
                                            const tasks::UnkeptWork& work);

/// Errors: as tasks::recoverWork.
core::Result<std::vector<tasks::RecoveredWork>> recoverInLibrary(
    const std::filesystem::path& libraryPath);

}  // namespace pantile::desktop
