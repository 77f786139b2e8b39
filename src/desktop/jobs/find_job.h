#pragma once

// What runs off the window's thread: a search.

#include <filesystem>
#include <string>
#include <vector>

#include "catalogue/query.h"
#include "catalogue/sort_key.h"
#include "core/ids.h"
#include "core/result.h"

namespace pantile::desktop {

struct FindRequest {
    std::filesystem::path libraryPath;
    catalogue::Query query;
    catalogue::SortKey sort;
};

struct FindAnswer {
    std::vector<core::TextureId> ids;
    std::int64_t all = 0;  ///< How many textures the library has that are not removed.
};

/// Errors: as opening and searching a library.
core::Result<FindAnswer> runFind(const FindRequest& request);

}  // namespace pantile::desktop
