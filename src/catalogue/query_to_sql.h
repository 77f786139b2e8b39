#pragma once

// A query as SQL. Every value of the query is a bound parameter; the SQL text itself is made of
// fixed pieces.

#include <string>
#include <vector>

#include "catalogue/match_list.h"
#include "catalogue/query.h"
#include "catalogue/query_sets.h"
#include "catalogue/sort_key.h"
#include "catalogue/sql_piece.h"

namespace pantile::catalogue {

/// A condition over the table facts, called f. Errors: as Connection::error.
core::Result<SqlPiece> toCondition(const Query& query, QuerySets& sets);

/// A statement of one row that adds all that match to the list, each with the number by which the
/// order rises; by relevance and by titles, which no number orders, with 0.
core::Result<SqlPiece> toMatchStatement(const Query& query, SortKey order, MatchList& matching,
                                        QuerySets& sets);

/// The words asked for, without those behind a '-'.
std::vector<std::string> wordsOf(const Query& query);

}  // namespace pantile::catalogue
