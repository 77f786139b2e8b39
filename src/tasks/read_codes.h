#pragma once

#include <filesystem>
#include <vector>

#include "codec/harvest.h"
#include "core/result.h"
#include "tasks/files.h"
#include "tasks/share_codes.h"

namespace pantile::tasks {

/// Writes each decoded texture as an indexed PNG into `folder`, named after its place and title.
/// Errors: AlreadyExists before anything is written; Io.
core::Result<std::vector<std::filesystem::path>> writePictures(
    const std::vector<codec::FoundCode>& codes, const std::filesystem::path& folder,
    IfExists ifExists);

}  // namespace pantile::tasks
