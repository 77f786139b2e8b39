#pragma once

// What a record of a library file has to be beyond the kinds of its values: the rules that the
// library's own functions keep when they write such a row.

#include "catalogue/library.h"
#include "catalogue/library_file_record.h"
#include "core/result.h"

namespace pantile::catalogue {

/// Before its row is stored. Errors: InvalidInput, TooLarge.
core::Result<void> checkRecord(const Library& library, const FileRecord& record);

/// Canvases and boards are looked at as they are read back. Errors: Corrupt.
core::Result<void> checkStoredRecord(Library& library, const FileRecord& record);

}  // namespace pantile::catalogue
