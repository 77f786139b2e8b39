#pragma once

// Saved searches: queries with a name, in an order of their own, beside the shelves.

#include <string>
#include <string_view>
#include <vector>

#include "catalogue/library.h"
#include "core/result.h"

namespace pantile::catalogue {

struct SavedSearch {
    std::string name;
    std::string query;               ///< In the query language, as it was written.
    std::string sort = "relevance";  ///< As parseSortKey reads it.

    bool operator==(const SavedSearch&) const = default;
};

/// In the order in which they were saved.
core::Result<std::vector<SavedSearch>> listSearches(const Library& library);

/// Errors: NotFound with the nearest name.
core::Result<SavedSearch> readSearch(const Library& library, std::string_view name);

/// Errors: AlreadyExists; as core::checkName; as parseQuery and parseSortKey.
core::Result<void> saveSearch(Library& library, const SavedSearch& search);

/// Errors: NotFound; AlreadyExists; as core::checkName.
core::Result<void> renameSearch(Library& library, std::string_view name, std::string_view newName);

/// Errors: NotFound.
core::Result<void> removeSearch(Library& library, std::string_view name);

}  // namespace pantile::catalogue
