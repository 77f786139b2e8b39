#pragma once

// A query as SQL. Every value of the query is a bound parameter; the SQL text itself is made of
// fixed pieces.

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <variant>
#include <vector>

#include "catalogue/id_set.h"
#include "catalogue/query.h"
#include "catalogue/sort_key.h"
#include "catalogue/statement.h"
#include "catalogue/text_folding.h"

namespace pantile::catalogue {

using OwnedValue = std::variant<std::int64_t, std::string, IdSet*>;

/// SQL with "?" for each of the values, in their order.
struct SqlPiece {
    std::string sql;
    std::vector<OwnedValue> values;

    void append(const SqlPiece& other);
};

/// A condition over the table facts, called f.
SqlPiece toCondition(const Query& query, const TextFolding& folding);

/// A statement of one row that adds the ids of all that match to the set.
SqlPiece toMatchStatement(const Query& query, IdSet& matching, const TextFolding& folding);

/// Where the order is that of ids alone: which way; Usual is ascending.
std::optional<SortDirection> orderOfIds(const Query& query, SortKey sort);

/// A statement that gives the ids of the set, which must outlive it, in order; LIMIT and OFFSET
/// may follow. `share` says how many of the library's textures they are. Relevance ranks textures
/// in whose title the query's words stand first, then newest first.
enum class Share { Few, Many };
SqlPiece toOrderStatement(const Query& query, SortKey sort, IdSet& matching, Share share,
                          const TextFolding& folding);

/// Views of the values, for Statement::bind; they must outlive it.
std::vector<BoundValue> boundValues(std::span<const OwnedValue> values);

}  // namespace pantile::catalogue
