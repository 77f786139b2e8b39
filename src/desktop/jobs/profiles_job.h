#pragma once

// Canvases, boards and palettes read off the window's thread, and the costs that follow them.

#include <filesystem>
#include <optional>
#include <string>

#include "catalogue/texture_row.h"
#include "core/ids.h"
#include "core/progress.h"
#include "core/result.h"
#include "desktop/models/profile.h"
#include "tasks/palette_file.h"

namespace pantile::desktop {

/// Errors: those of the library.
core::Result<Profiles> readProfiles(const std::filesystem::path& libraryPath);

/// As tasks::refreshEstimates.
core::Result<std::int64_t> workOutCosts(const std::filesystem::path& libraryPath,
                                        const core::Progress& progress);

/// Which texture is planned under which canvas or board, that need not be in the library.
struct TrialRequest {
    std::filesystem::path libraryPath;
    core::TextureId id;
    Profile profile;
};

struct TrialCost {
    Profile profile;
    std::string title;                        ///< Of the texture.
    std::optional<catalogue::Estimate> cost;  ///< Nothing if it fits no canvas.
};

/// Errors: those of the library.
core::Result<TrialCost> tryOut(const TrialRequest& request);

}  // namespace pantile::desktop
