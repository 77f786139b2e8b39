#pragma once

// Takes a library file back in: docs/library-file.md.

#include <cstdint>

#include "catalogue/json_reader.h"
#include "catalogue/library.h"
#include "core/progress.h"
#include "core/result.h"

namespace pantile::catalogue {

/// Whether there is nothing in it but palettes, canvases and boards.
core::Result<bool> holdsNoRecords(const Library& library);

/// Fills a library for which holdsNoRecords is true; its canvases and boards are replaced. Ids
/// stay, and what check would complain of is refused. All or nothing, in one transaction. Gives the
/// number of textures, removed ones too. Memory: that of one record. Errors, with line and column,
/// or the place in the library: InvalidInput, TooLarge; Unsupported for a newer version of the
/// format; AlreadyExists if the library holds something; Cancelled; those of the source and of the
/// library.
core::Result<std::int64_t> readLibraryFile(Library& library, ByteSource source,
                                           const core::Progress& progress = {});

}  // namespace pantile::catalogue
