#pragma once

// A query as an SQL condition. Every value of the query is a bound parameter; the SQL text itself
// is made of fixed pieces.

#include <cstdint>
#include <span>
#include <string>
#include <variant>
#include <vector>

#include "catalogue/query.h"
#include "catalogue/sort_key.h"
#include "catalogue/statement.h"

namespace pantile::catalogue {

using OwnedValue = std::variant<std::int64_t, std::string>;

/// SQL with "?" for each of the values, in their order.
struct SqlPiece {
    std::string sql;
    std::vector<OwnedValue> values;

    void append(const SqlPiece& other);
};

/// A condition over the tables of kTextureTables.
SqlPiece toCondition(const Query& query);

/// The terms of an ORDER BY over the same tables. Relevance ranks textures in whose title the
/// query's words stand first, then newest first.
SqlPiece toOrder(const Query& query, SortKey sort);

/// Views of the values, for Statement::bind; they must outlive it.
std::vector<BoundValue> boundValues(std::span<const OwnedValue> values);

/// What queries are asked of: textures t, contents c, estimates e.
inline constexpr const char* kTextureTables =
    " FROM textures t JOIN contents c ON c.id = t.content_id"
    " LEFT JOIN estimates e ON e.texture_id = t.id ";

}  // namespace pantile::catalogue
