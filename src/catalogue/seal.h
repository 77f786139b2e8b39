#pragma once

// Seals: what finds a changed value in a row that nothing else vouches for. The triggers of
// schema/0006_seals.sql keep of each table the sum of its rows' seals.

#include <cstdint>
#include <span>
#include <string>
#include <vector>

#include "catalogue/connection.h"
#include "core/result.h"

struct sqlite3_value;

namespace pantile::catalogue {

/// A number of at most 38 bits.
std::uint64_t sealOf(std::span<sqlite3_value* const> values);

/// Registers seal(value, ...), which makes a number of at most 38 bits from the types and bytes of
/// any values, so that the sum over a hundred million rows is still a number of SQLite's. Every
/// connection needs it, since triggers call it. Stored in libraries: it never changes.
core::Result<void> addSealFunction(Connection& connection);

/// The tables whose rows are not those that were written. To be called inside a transaction.
core::Result<std::vector<std::string>> brokenSeals(Connection& connection);

}  // namespace pantile::catalogue
