#pragma once

// Export: textures as files that other programs open.

#include <filesystem>
#include <string>
#include <vector>

#include "catalogue/library.h"
#include "core/ids.h"
#include "core/progress.h"
#include "core/result.h"
#include "tasks/files.h"

namespace pantile::tasks {

enum class ExportForm {
    Png,    ///< Indexed, palette and indices kept.
    Csv,    ///< Rows of palette indices, the palette in a remark above them.
    Json,   ///< Words, palette and rows of indices.
    Text,   ///< The code that `code` prints.
    Sheet,  ///< All of them in one PNG, with their ids.
};

struct ExportOptions {
    ExportForm form = ExportForm::Png;
    int enlarge = 1;  ///< For Png: pixels a cell; above 1 the picture is true colour.
    IfExists ifExists = IfExists::Refuse;
};

/// Writes one file for each texture (one in all for Sheet) into `folder`, which is made if missing.
/// Names are made from id and title, are safe everywhere and lie in `folder`.
/// Returns the files written, in order.
/// Errors: AlreadyExists before anything is written, if one of the files is there; NotFound; Io;
/// Cancelled, with what was written before staying.
core::Result<std::vector<std::filesystem::path>> exportTextures(
    const catalogue::Library& library, const std::vector<core::TextureId>& ids,
    const std::filesystem::path& folder, const ExportOptions& options,
    const core::Progress& progress = {});

}  // namespace pantile::tasks
