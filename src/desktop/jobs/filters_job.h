#pragma once

// What the library can be filtered by, with counts, read off the window's thread.

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "catalogue/searches.h"
#include "catalogue/shelves.h"
#include "catalogue/tags.h"
#include "core/progress.h"
#include "core/result.h"

namespace pantile::desktop {

struct CountedSearch {
    catalogue::SavedSearch search;
    std::int64_t count = 0;
};

struct LibraryFilters {
    std::vector<catalogue::Shelf> shelves;
    std::vector<catalogue::TagCount> tags;  ///< That some texture has.
    std::vector<CountedSearch> searches;
    std::int64_t all = 0;
    std::int64_t removed = 0;
    std::optional<std::string> undo;  ///< What would be undone,
    std::optional<std::string> redo;  ///< and what done again.
};

/// Errors: those of the library; Cancelled.
core::Result<LibraryFilters> readFilters(const std::filesystem::path& libraryPath,
                                         const core::Progress& progress);

}  // namespace pantile::desktop
