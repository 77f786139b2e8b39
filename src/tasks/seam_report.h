#pragma once

// How visible a texture's seams are where it is repeated, and a picture of them. See
// docs/seams-and-colours.md section 2.

#include <filesystem>
#include <optional>

#include "catalogue/library.h"
#include "core/ids.h"
#include "core/result.h"
#include "picture/seam_check.h"
#include "tasks/files.h"

namespace pantile::tasks {

/// A PNG to write: picture::seamPicture.
struct SeamPictureFile {
    std::filesystem::path path;
    int enlarge = 8;  ///< Pixels a cell, 1..64.
    IfExists ifExists = IfExists::Refuse;
};

/// Changes nothing in the library. Errors: NotFound; AlreadyExists or Io for the file; TooLarge for
/// a picture of too many pixels; Corrupt.
core::Result<picture::SeamCheck> reportSeams(const catalogue::Library& library, core::TextureId id,
                                             const std::optional<SeamPictureFile>& file);

}  // namespace pantile::tasks
