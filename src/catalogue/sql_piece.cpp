#include "catalogue/sql_piece.h"

namespace pantile::catalogue {
namespace {

BoundValue viewOf(const OwnedValue& value) {
    if (const auto* number = std::get_if<std::int64_t>(&value)) return *number;
    if (const auto* object = std::get_if<BoundObject>(&value)) return *object;
    return std::string_view(std::get<std::string>(value));
}

}  // namespace

void SqlPiece::append(const SqlPiece& other) {
    sql += other.sql;
    values.insert(values.end(), other.values.begin(), other.values.end());
}

core::Result<Statement> prepare(Connection& connection, const SqlPiece& piece) {
    PANTILE_ASSIGN_OR_RETURN(Statement statement, Statement::prepare(connection, piece.sql));
    std::vector<BoundValue> values;
    for (const OwnedValue& value : piece.values) values.push_back(viewOf(value));
    PANTILE_RETURN_IF_ERROR(statement.bind(values));
    return statement;
}

}  // namespace pantile::catalogue
