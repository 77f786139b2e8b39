#pragma once

// Copies the rows of a damaged database that can still be read.

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "catalogue/connection.h"
#include "catalogue/integrity.h"
#include "core/result.h"

namespace pantile::catalogue {

/// A table whose rows cannot be worked out from others, and the first column of its key.
struct RescuedTable {
    std::string_view name;
    std::string_view key;
};

/// In an order in which the triggers find what they look for.
std::vector<RescuedTable> rescuedTables();

/// Tables that are worked out from others, so that nothing is lost with them, and those by which
/// actions are undone: a library that was mended begins these anew.
std::vector<std::string_view> derivedTables();

/// Copies rows into the empty table of the same name from the database that is attached as
/// `damaged`; where reading all at once fails, key by key. Foreign keys have to be off. What was
/// not copied is added to `lost`. Errors: Io, if the new file cannot be written.
core::Result<void> rescueRows(Connection& connection, const RescuedTable& table,
                              std::vector<Problem>& lost);

}  // namespace pantile::catalogue
