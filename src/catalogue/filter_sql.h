#pragma once

// Each filter of a query as an SQL condition over the table facts, called f.

#include <string_view>

#include "catalogue/query_to_sql.h"

namespace pantile::catalogue {

SqlPiece filterSql(const Filter& filter, const TextFolding& folding);

/// True of textures in whose title the word stands.
SqlPiece titleHolds(std::string_view word, const TextFolding& folding);

}  // namespace pantile::catalogue
