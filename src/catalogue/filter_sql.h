#pragma once

// Each filter of a query as an SQL condition over the table facts, called f.

#include "catalogue/query.h"
#include "catalogue/query_sets.h"
#include "catalogue/sql_piece.h"

namespace pantile::catalogue {

/// What it needs of other tables is put into `sets`. Errors: as Connection::error.
core::Result<SqlPiece> filterSql(const Filter& filter, QuerySets& sets, QuerySets::Use use);

}  // namespace pantile::catalogue
