#pragma once

// Writes all of a library as one JSON text: docs/library-file.md.

#include <functional>
#include <string_view>

#include "catalogue/library.h"
#include "core/progress.h"
#include "core/result.h"

namespace pantile::catalogue {

/// Takes the text piece by piece.
using TextSink = std::function<core::Result<void>(std::string_view)>;

/// The same library gives the same bytes. It is of one moment, and takes the memory of one record.
/// Errors: Corrupt if something in the library is damaged; Cancelled; those of the sink.
core::Result<void> writeLibraryFile(const Library& library, const TextSink& sink,
                                    const core::Progress& progress = {});

}  // namespace pantile::catalogue
