#pragma once

// Whether a library holds what it says it holds. SQLite's own check does not see a changed byte in
// a grid; the fingerprints do.

#include <cstdint>
#include <string>
#include <vector>

#include "catalogue/connection.h"
#include "catalogue/library.h"
#include "core/progress.h"
#include "core/result.h"

namespace pantile::catalogue {

struct Problem {
    std::string where;  ///< "texture 17", "file", "canvas 'Quay'"
    std::string what;

    bool operator==(const Problem&) const = default;
};

struct CheckReport {
    bool ok = true;
    std::int64_t textures = 0;  ///< Removed ones too.
    std::vector<Problem> problems;
};

/// SQLite's integrity and foreign keys, the tables against those of this version, every palette
/// and grid against its fingerprint, every texture's words and history, what textures are found
/// by, every canvas, board and load. Damage is an answer, not an error. Errors: Busy, Cancelled,
/// Io.
core::Result<CheckReport> checkLibrary(const Library& library, const core::Progress& progress = {});

}  // namespace pantile::catalogue
