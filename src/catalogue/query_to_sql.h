#pragma once

// A query as SQL. Every value of the query is a bound parameter; the SQL text itself is made of
// fixed pieces.

#include <cstdint>
#include <span>
#include <string>
#include <variant>
#include <vector>

#include "catalogue/query.h"
#include "catalogue/sort_key.h"
#include "catalogue/statement.h"
#include "catalogue/text_folding.h"

namespace pantile::catalogue {

using OwnedValue = std::variant<std::int64_t, std::string>;

/// SQL with "?" for each of the values, in their order.
struct SqlPiece {
    std::string sql;
    std::vector<OwnedValue> values;

    void append(const SqlPiece& other);
};

/// A condition over the table facts, called f.
SqlPiece toCondition(const Query& query, const TextFolding& folding);

enum class Way {
    FromMatches,    ///< Finds all that match and sorts them: right where few do.
    AlongTheOrder,  ///< Goes along the order and takes what matches: right for the first of many.
};

/// A statement that gives the ids found, in order; LIMIT and OFFSET may follow. Both ways give the
/// same. Relevance ranks textures in whose title the query's words stand first, then newest first.
SqlPiece toIdStatement(const Query& query, SortKey sort, Way way, const TextFolding& folding);

/// Views of the values, for Statement::bind; they must outlive it.
std::vector<BoundValue> boundValues(std::span<const OwnedValue> values);

}  // namespace pantile::catalogue
