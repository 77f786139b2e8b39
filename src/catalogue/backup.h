#pragma once

// Backups: whole copies of a library, made while it is in use, and put back.

#include <cstdint>
#include <filesystem>

#include "catalogue/library.h"
#include "core/result.h"

namespace pantile::catalogue {

enum class Overwrite { Never, Replace };

/// Writes a copy of the library as it is at one moment. The copy appears at `path` complete or not
/// at all. Errors: AlreadyExists if something is there and may not be replaced; InvalidInput if it
/// is the library itself; Io.
core::Result<void> backupTo(const Library& library, const std::filesystem::path& path,
                            Overwrite overwrite = Overwrite::Never);

struct RestoreReport {
    std::filesystem::path kept;  ///< Where the library as it was now lies; empty if there was none.
    std::int64_t textures = 0;   ///< In the library as it is now.
};

/// Makes the library at `library` what `backup` holds. The backup is checked first; the present
/// library is kept beside it. Other programs that have it open see the change. A present library
/// too damaged to open is moved aside.
/// Errors: NotFound or InvalidInput for the backup; Corrupt with the first fault if its check finds
/// any; Busy, Unsupported, Io. The library is then as before.
core::Result<RestoreReport> restoreLibrary(const std::filesystem::path& library,
                                           const std::filesystem::path& backup,
                                           const OpenOptions& options = {});

}  // namespace pantile::catalogue
