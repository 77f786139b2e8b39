#pragma once

// What runs off the window's thread: reading one texture with its costs, and making codes.

#include <filesystem>
#include <vector>

#include <QString>

#include "catalogue/history.h"
#include "catalogue/texture_row.h"
#include "core/ids.h"
#include "core/progress.h"
#include "core/result.h"

namespace pantile::desktop {

struct TextureDetails {
    catalogue::TextureRecord record;  ///< With an estimate, where the texture fits a canvas.
    std::int64_t codeCharacters = 0;
    std::vector<catalogue::Revision> revisions;
};

/// Errors: NotFound; Corrupt; Cancelled; errors of the library.
core::Result<TextureDetails> readDetails(const std::filesystem::path& libraryPath,
                                         core::TextureId id, const core::Progress& progress);

/// The codes of the textures in that order, an empty line between each two.
/// Errors: as readDetails.
core::Result<QString> codesToPaste(const std::filesystem::path& libraryPath,
                                   const std::vector<core::TextureId>& ids,
                                   const core::Progress& progress);

}  // namespace pantile::desktop
