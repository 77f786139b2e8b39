#pragma once

// A page to print for a stored load: what lies in which slot, and the cautions.

#include <filesystem>
#include <string>

#include "catalogue/library.h"
#include "core/progress.h"
#include "core/result.h"
#include "tasks/files.h"

namespace pantile::tasks {

/// Writes a PDF named after the load into `folder`, which is made if missing, and returns its path.
/// `canvas`: in place of the one that the load was made for. Needs a QGuiApplication. Errors:
/// NotFound; DoesNotFit if the textures do not fit the board (any more); AlreadyExists; Io;
/// Cancelled.
core::Result<std::filesystem::path> printSlots(
    const catalogue::Library& library, const std::string& name, const std::filesystem::path& folder,
    IfExists ifExists, const core::Progress& progress = {}, const std::string& canvas = {});

}  // namespace pantile::tasks
