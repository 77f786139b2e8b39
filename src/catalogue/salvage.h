#pragma once

// Saves what can be read of a damaged library into a new one.

#include <cstdint>
#include <filesystem>
#include <vector>

#include "catalogue/integrity.h"
#include "catalogue/library.h"
#include "core/result.h"

namespace pantile::catalogue {

struct SalvageReport {
    std::int64_t textures = 0;  ///< In the new library, removed ones too.
    std::vector<Problem> lost;  ///< What could not be saved, or not as it was.
};

/// Reads the library at `damaged`, of any version and in whatever state, and makes one at `fresh`
/// of all that holds together; ids stay. The damaged file is only read. The new library appears
/// whole or not at all, and its check finds nothing. Errors: NotFound; AlreadyExists if something
/// is at `fresh`; InvalidInput if it is another program's database; Corrupt if nothing can be read;
/// Io.
core::Result<SalvageReport> salvageLibrary(const std::filesystem::path& damaged,
                                           const std::filesystem::path& fresh,
                                           const OpenOptions& options);

}  // namespace pantile::catalogue
